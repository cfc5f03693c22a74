package club.emberwell.report.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionClass;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.QueryCautions;
import club.emberwell.search.query.SearchQuery;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What people type for things that harm, on the search page and in a report of their own. */
class TypedDangersTest {
  private static final Catalog CATALOG = CatalogFiles.catalog();

  private static List<Caution> searched(String text) {
    return QueryCautions.of(SearchQuery.everything().withText(text), CATALOG);
  }

  private static Interpretation cut(String material, String coating) {
    WrittenTrial trial = Entries.trial(Entries.settings("40 W", "10 mm/s", null));
    WrittenReport written = Entries.work(material, coating, null, "cut", List.of(trial));
    return ReportInterpreter.read(written, null, CATALOG, NumberStyle.ANY);
  }

  @ParameterizedTest
  @CsvFileSource(resources = "/catalog/typed_dangers.csv", useHeadersInDisplayName = true)
  void aTypedDangerIsMetOnTheSearchPageAndInAReport(String typed, String rule, String weight) {
    Caution met =
        searched(typed).stream().filter(c -> c.rule().id().equals(rule)).findFirst().orElseThrow();
    assertEquals(weight, met.rule().weight().code());
    Interpretation read = cut(typed, null);
    boolean ban = met.rule().weight() == CautionClass.BAN;
    assertEquals(ban, read.ban().isPresent(), () -> typed + ": " + read.ban());
    if (!ban) {
      assertTrue(
          ReportCautions.of(read.work(), LaserSource.CO2, CATALOG.cautions()).stream()
              .anyMatch(c -> c.rule().id().equals(rule)));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"teflon", "vinyl", "PVC film", "epoxy coated", "lead paint"})
  void aTypedCoatingThatIsProhibitedIsRefusedOnAnyMaterial(String coating) {
    assertTrue(cut("mild steel", coating).ban().isPresent());
  }

  @ParameterizedTest
  @ValueSource(strings = {"carbon steel", "acetal resin rod", "PVC-free leather", "no vinyl, oak"})
  void aLongerNameOrADenialIsNotTakenForTheDangerInIt(String typed) {
    assertTrue(searched(typed).stream().noneMatch(c -> c.rule().isBan()), typed);
    assertTrue(cut(typed, null).ban().isEmpty(), typed);
  }

  @Test
  void aThingIsOfStainlessSteelOnlyWhereAWordOrACoatingSaysSo() {
    Set<String> steel = dangers("stainless steel");
    assertFalse(steel.isEmpty());
    for (String typed : List.of("mug", "bottle", "two cups", "engraved flask")) {
      assertTrue(dangers(typed).stream().noneMatch(steel::contains), typed);
    }
    for (String typed : List.of("stainless mug", "inox bottle", "powder coated mug")) {
      assertTrue(dangers(typed).containsAll(steel), typed);
    }
  }

  /** What a text raises through stainless steel. */
  private static Set<String> dangers(String text) {
    return searched(text).stream()
        .filter(c -> c.because().filter(t -> t.slug().equals("stainless-steel")).isPresent())
        .map(c -> c.rule().id())
        .collect(Collectors.toSet());
  }

  @Test
  void whatIsTickedCountsAndItsProcessAndSourceLeaveOutTheRest() {
    SearchQuery polycarbonate =
        SearchQuery.everything().withFacet(Facet.MATERIAL.code(), List.of("polycarbonate"));
    assertTrue(QueryCautions.of(polycarbonate, CATALOG).get(0).rule().isBan());
    SearchQuery marked =
        polycarbonate.withFacet(Facet.PROCESS.code(), List.of(Process.SURFACE_ENGRAVING.code()));
    assertTrue(QueryCautions.of(marked, CATALOG).stream().noneMatch(c -> c.rule().isBan()));
    assertFalse(QueryCautions.of(marked, CATALOG).isEmpty());
    SearchQuery steel = SearchQuery.everything().withText("mild steel");
    assertFalse(QueryCautions.of(steel, CATALOG).isEmpty());
    SearchQuery co2 = steel.withFacet(Facet.SOURCE.code(), List.of(LaserSource.CO2.code()));
    assertEquals(List.of(), QueryCautions.of(co2, CATALOG));
  }
}

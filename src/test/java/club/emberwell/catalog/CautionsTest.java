package club.emberwell.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class CautionsTest {
  private final Cautions cautions = CatalogFiles.catalog().cautions();

  private static Process process(String code) {
    return Stream.of(Process.values()).filter(p -> p.code().equals(code)).findFirst().orElse(null);
  }

  @ParameterizedTest
  @CsvFileSource(resources = "/catalog/hazards.csv", useHeadersInDisplayName = true)
  void theHazardTableIsHeeded(
      String material, String coating, String process, Double thickness, String id, String weight) {
    List<Caution> found = cautions.forWork(material, coating, process(process), thickness, null);
    CautionRule rule =
        found.stream().map(Caution::rule).filter(r -> r.id().equals(id)).findFirst().orElseThrow();
    assertEquals(weight, rule.weight().code());
    boolean banned = cautions.ban(material, coating, process(process), thickness).isPresent();
    assertEquals("ban".equals(weight), banned);
  }

  /** Whatever is done to it; polycarbonate only where it is cut thicker than 1 mm. */
  @Test
  void wordsThatNameSomethingHaveItsCautionsBeforeTheProcessIsSaid() {
    assertTrue(
        cautions.asWritten("PVC banner", null, null).stream()
            .anyMatch(caution -> caution.rule().isBan()));
  }

  @Test
  void exactlyTheseTermsAreProhibited() {
    assertEquals(
        Set.of(
            "treated-wood",
            "cca-treated-wood",
            "pvc",
            "foamed-pvc",
            "adhesive-vinyl",
            "pvc-leather",
            "polyvinylidene-chloride",
            "unknown-plastic",
            "faux-leather",
            "fluoropolymer",
            "ptfe",
            "polycarbonate",
            "abs",
            "abs-laminate",
            "polystyrene-foam",
            "foam-core-board",
            "polypropylene-foam",
            "epoxy-resin",
            "fibreglass",
            "fr4",
            "carbon-fibre",
            "beryllium-copper"),
        prohibited(TermKind.MATERIAL));
    assertEquals(
        Set.of("old-paint", "epoxy-coating", "vinyl-wrap", "non-stick-coating"),
        prohibited(TermKind.COATING));
    assertTrue(cautions.ban("polycarbonate", null, Process.SURFACE_ENGRAVING, null).isEmpty());
  }

  private Set<String> prohibited(TermKind kind) {
    return CatalogFiles.catalog().vocabulary().terms(kind).stream()
        .map(Term::slug)
        .filter(slug -> cautions.forTerm(kind, slug).stream().anyMatch(c -> c.rule().isBan()))
        .collect(Collectors.toSet());
  }

  /** A group is prohibited by a caution of its own, never for the sake of what it holds. */
  @Test
  void aGroupIsNotProhibitedBecauseOneOfItsKindsIs() {
    assertTrue(cautions.ban("polymers", null, Process.CUT, null).isEmpty());
    assertTrue(cautions.ban("acrylic", null, Process.CUT, 3.0).isEmpty());
    assertTrue(cautions.ban("wood", null, Process.CUT, 3.0).isEmpty());
    assertTrue(cautions.banInText("clear plastic", Process.CUT, 3.0).isPresent());
  }

  @Test
  void aBanSaysHazardAgentAndSource() {
    Ban ban = cautions.ban("adhesive-vinyl", null, Process.CUT, 0.1).orElseThrow();
    assertEquals("Adhesive vinyl film", ban.subject());
    assertTrue(ban.agent().contains("hydrogen chloride"));
    assertTrue(ban.hazard().contains("toxic"));
    assertTrue(ban.source().contains("NIOSH"));
    assertTrue(ban.sentence().contains(ban.agent()) && ban.sentence().contains(ban.source()));
  }

  @Test
  void disputedCautionsSayWhoSaysWhat() {
    for (String slug : List.of("pom", "polycarbonate", "chrome-tanned-leather", "mdf")) {
      assertTrue(
          cautions.forTerm(TermKind.MATERIAL, slug).stream()
              .map(caution -> caution.rule().evidence())
              .anyMatch(e -> e.disputed() && !e.dispute().isBlank()),
          slug);
    }
  }

  @Test
  void everyLimitNamesItsAuthorityAndHowSureItIs() {
    for (CautionRule rule : cautions.rules()) {
      for (ExposureLimit limit : rule.limits()) {
        assertTrue(limit.value().matches("\\d.*"), rule.id());
        assertFalse(limit.authority().isBlank(), rule.id());
        assertTrue(List.of("from memory", "read").contains(limit.check()), rule.id());
      }
    }
  }

  @Test
  void aTwoMillimetreCutOfPolycarbonateIsRefusedAndAFilmIsNot() {
    assertTrue(cautions.ban("polycarbonate", null, Process.CUT, 2.0).isPresent());
    assertTrue(cautions.ban("polycarbonate", null, Process.CUT, 1.0).isEmpty());
    assertTrue(cautions.ban("polycarbonate", null, Process.SCORE, 2.0).isEmpty());
  }

  @Test
  void bansComeFirstAndGeneralCautionsLast() {
    List<Caution> found = cautions.forWork("pvc", null, Process.CUT, 1.0, LaserSource.CO2);
    assertEquals(CautionClass.BAN, found.get(0).rule().weight());
    assertTrue(found.get(found.size() - 1).because().isEmpty());
  }

  @Test
  void everyWorkCarriesTheGeneralCautionsOfItsSource() {
    List<String> co2 = ids(cautions.forWork(null, null, Process.CUT, null, LaserSource.CO2));
    assertTrue(co2.containsAll(List.of("never-unattended", "fire-watch", "extraction", "eyewear")));
    assertTrue(co2.contains("invisible-beam"));
    assertFalse(co2.contains("open-frame-diode"));
    assertTrue(
        ids(cautions.forWork("oak", null, Process.SCORE, 3.0, LaserSource.DIODE))
            .contains("open-frame-diode"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "red vinyl sticker",
        "my old PVC pipe",
        "ABS enclosure",
        "pressure treated deck wood",
        "BeCu spring",
        "cheap faux leather wallet",
        "teal PTFE coated pan"
      })
  void aTextOfItsOwnThatNamesAProhibitedMaterialIsRefused(String text) {
    assertTrue(cautions.banInText(text, Process.SURFACE_ENGRAVING, null).isPresent(), text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"PVC-free leather", "no vinyl, just paper", "oak barrel lid", "", "fabric"})
  void aTextThatDeniesOrNamesNothingProhibitedIsNot(String text) {
    assertTrue(cautions.banInText(text, Process.SURFACE_ENGRAVING, null).isEmpty(), text);
  }

  private static List<String> ids(List<Caution> found) {
    return found.stream().map(caution -> caution.rule().id()).toList();
  }
}

package club.emberwell.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.HazardCard.Verdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HazardCardTest {
  private final Catalog catalog = CatalogFiles.catalog();

  private HazardCard card(TermKind kind, String slug) {
    return HazardCard.of(catalog, catalog.vocabulary().term(kind, slug).orElseThrow());
  }

  private HazardCard material(String slug) {
    return card(TermKind.MATERIAL, slug);
  }

  /** The classes B and C of the table of hazards that the project was planned with. */
  @ParameterizedTest
  @CsvSource({
    "pvc, prohibited",
    "adhesive-vinyl, prohibited",
    "ptfe, prohibited",
    "abs, prohibited",
    "polystyrene-foam, prohibited",
    "fr4, prohibited",
    "cca-treated-wood, prohibited",
    "beryllium-copper, prohibited",
    "polycarbonate, partly-prohibited",
    "unknown-plastic, prohibited-until-identified",
    "faux-leather, prohibited-until-identified",
    "pom, special-care",
    "nylon, special-care",
    "mdf, special-care",
    "chrome-tanned-leather, special-care",
    "cast-acrylic, general-care",
    "oak, general-care"
  })
  void theFirstLineSaysWhetherItMayBeBurned(String slug, String verdict) {
    assertEquals(verdict, material(slug).verdict().code());
  }

  /** Gases of the same table, and of the list with a column for gas that it names. */
  @ParameterizedTest
  @CsvSource({
    "pvc, hydrogen chloride (HCl)",
    "pvc, benzene",
    "ptfe, carbonyl fluoride (COF2)",
    "abs, hydrogen cyanide (HCN)",
    "pom, formaldehyde",
    "nylon, hydrogen cyanide (HCN)",
    "mdf, formaldehyde",
    "cast-acrylic, methyl methacrylate",
    "galvanised-steel, zinc oxide fume",
    "cca-treated-wood, arsenic compounds"
  })
  void itNamesWhatIsGivenOff(String slug, String substance) {
    assertTrue(
        material(slug).givesOff().stream().anyMatch(given -> given.substance().equals(substance)),
        slug);
  }

  /** OSHA 29 CFR 1910.1000 and the UK limit, as the table of limits has them. */
  @Test
  void limitsSayWhereTheyApply() {
    Map<String, String> limits =
        material("pvc").limits().stream()
            .filter(limit -> limit.agent().equals("hydrogen chloride"))
            .collect(Collectors.toMap(ExposureLimit::jurisdiction, ExposureLimit::value));
    assertEquals(Map.of("United States", "5 ppm", "United Kingdom", "1 ppm"), limits);
  }

  @Test
  void whatIsProhibitedHasNoExtractionThatWouldDo() {
    for (Term term : catalog.vocabulary().terms(TermKind.MATERIAL)) {
      HazardCard card = material(term.slug());
      boolean prohibited = card.verdict().compareTo(Verdict.PROHIBITED) <= 0;
      assertEquals(prohibited, card.extraction().isEmpty(), term.slug());
      assertFalse(card.never().isEmpty(), term.slug());
    }
  }

  @Test
  void whatNobodyKnowsSaysHowToFindOutWithTheDataSheetFirst() {
    for (String slug : List.of("unknown-plastic", "faux-leather", "polymers")) {
      List<String> steps = material(slug).findOut();
      assertTrue(steps.get(0).contains("supplier"), slug);
      assertTrue(steps.get(0).contains("safety data sheet"), slug);
    }
    String flame =
        material("unknown-plastic").findOut().stream()
            .filter(step -> step.contains("flame test"))
            .findFirst()
            .orElseThrow();
    assertTrue(flame.contains("outdoors") && flame.contains("no other danger"), flame);
  }

  /** Both sides stand there, each with who takes it. */
  @Test
  void whereListsDisagreeBothSidesStand() {
    List<CautionSource> sides = material("pom").disputed().get(0).rule().evidence().sides();
    assertTrue(sides.get(0).says().startsWith("prohibits it"), sides.toString());
    assertEquals("approves it", sides.get(1).says());
    for (Caution caution : catalog.cautions().rules().stream().map(this::caution).toList()) {
      CautionEvidence evidence = caution.rule().evidence();
      if (evidence.disputed()) {
        assertTrue(evidence.sides().size() >= 2, caution.rule().id());
      }
    }
  }

  private Caution caution(CautionRule rule) {
    return new Caution(rule, Optional.empty());
  }

  @Test
  void everyStatementNamesItsSourcesAndWhereTheyApply() {
    for (CautionRule rule : catalog.cautions().rules()) {
      assertFalse(rule.evidence().sources().isEmpty(), rule.id());
      for (CautionSource source : rule.evidence().sources()) {
        assertFalse(source.jurisdiction().isBlank(), rule.id());
        assertTrue(rule.evidence().source().contains(source.name()), rule.id());
      }
      rule.limits().forEach(limit -> assertFalse(limit.jurisdiction().isBlank(), rule.id()));
    }
  }

  @Test
  void wordsThatTheListDoesNotHoldStayProhibitedUntilSomebodyKnows() {
    List<Caution> found = catalog.cautions().unlisted("zorblax sheet");
    assertEquals("unidentified-material", found.get(0).rule().id());
    assertTrue(found.get(0).rule().isBan());
    assertEquals("zorblax sheet", found.get(0).about().orElseThrow());
    CautionMark mark = CautionMark.of(found).orElseThrow();
    assertTrue(mark.sentence().startsWith("Prohibited, zorblax sheet: "), mark.sentence());
    // nothing in the list has it, and nothing is refused by it
    assertTrue(catalog.cautions().ban(null, null, null, null).isEmpty());
  }

  @Test
  void theMarkOfAWorkIsItsHeaviestCautionInASentence() {
    CautionMark mark =
        CautionMark.of(catalog.cautions().forWork("pom", null, null, null, null)).orElseThrow();
    assertEquals(
        "Caution, POM (acetal): releases formaldehyde and burns with a flame that is hard to see"
            + " (sources disagree).",
        mark.sentence());
    assertTrue(CautionMark.of(catalog.cautions().forWork("oak", null, null, null, null)).isEmpty());
  }
}

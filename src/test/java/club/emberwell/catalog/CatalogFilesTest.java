package club.emberwell.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The data files hang together. */
class CatalogFilesTest {
  private final Catalog catalog = CatalogFiles.catalog();
  private final Vocabulary vocabulary = catalog.vocabulary();

  @ParameterizedTest
  @CsvSource({"MATERIAL, 120", "COATING, 15", "COLOUR, 12", "DEFECT, 12"})
  void thereAreEnoughTermsOfEveryKind(TermKind kind, int least) {
    assertTrue(vocabulary.terms(kind).size() >= least);
  }

  @ParameterizedTest
  @EnumSource(TermKind.class)
  void everyTermHangsInTheTreeSoNoParentIsMissingAndThereIsNoCycle(TermKind kind) {
    long inFile = CatalogFiles.terms().stream().filter(term -> term.kind() == kind).count();
    assertEquals(inFile, vocabulary.terms(kind).size());
    for (Term term : vocabulary.terms(kind)) {
      List<Term> path = vocabulary.path(kind, term.slug());
      assertEquals(null, path.get(0).parent(), term.slug());
      assertEquals(term, path.get(path.size() - 1));
    }
  }

  @ParameterizedTest
  @EnumSource(TermKind.class)
  void noSpellingStandsForTwoTermsUnlessDeclaredAmbiguous(TermKind kind) {
    Folding folding = vocabulary.folding();
    Map<String, Set<String>> slugs = new TreeMap<>();
    for (Term term : vocabulary.terms(kind)) {
      Set<String> spellings = new TreeSet<>(term.synonyms());
      spellings.addAll(List.of(term.slug(), term.label()));
      spellings.forEach(
          s -> slugs.computeIfAbsent(folding.fold(s), key -> new TreeSet<>()).add(term.slug()));
    }
    Set<String> declared = ambiguous(kind).stream().map(folding::fold).collect(Collectors.toSet());
    slugs.keySet().removeIf(key -> slugs.get(key).size() == 1 || declared.contains(key));
    assertEquals(Map.of(), slugs);
  }

  @Test
  void everyDeclaredAmbiguityIsOne() {
    for (TermKind kind : TermKind.values()) {
      ambiguous(kind)
          .forEach(
              text ->
                  assertEquals(
                      Match.Outcome.AMBIGUOUS, vocabulary.resolve(kind, text).outcome(), text));
    }
  }

  /** The spellings that a file declares to mean several things. */
  private static List<String> ambiguous(TermKind kind) {
    JsonNode file =
        new ObjectMapper()
            .valueToTree(
                CatalogFiles.tree(
                    "vocabulary/" + kind.plural().toLowerCase(Locale.ROOT) + ".yaml"));
    return file.path("ambiguous").findValuesAsText("text");
  }

  @Test
  void everySlugIsLowerCaseWordsWithDashesAndUniqueInItsKind() {
    Set<String> seen = new HashSet<>();
    for (Term term : CatalogFiles.terms()) {
      assertTrue(term.slug().matches("[a-z0-9]+(-[a-z0-9]+)*"), term.slug());
      assertTrue(seen.add(term.kind() + term.slug()), term.slug());
    }
  }

  @Test
  void everyRuleNamesKnownTermsAndItsOwnId() {
    Set<String> ids = new HashSet<>();
    for (CautionRule rule : CatalogFiles.cautions()) {
      assertTrue(ids.add(rule.id()), rule.id());
      rule.scope()
          .materials()
          .forEach(slug -> assertTrue(vocabulary.term(TermKind.MATERIAL, slug).isPresent(), slug));
      rule.scope()
          .coatings()
          .forEach(slug -> assertTrue(vocabulary.term(TermKind.COATING, slug).isPresent(), slug));
      assertFalse(rule.evidence().source().isBlank());
      assertEquals(rule.evidence().disputed(), rule.evidence().dispute() != null, rule.id());
    }
  }

  @Test
  void noCautionEverSaysThatSomethingIsSafe() {
    for (CautionRule rule : CatalogFiles.cautions()) {
      String words = rule.claim() + " " + rule.advice() + " " + rule.hazard();
      assertFalse(words.toLowerCase().matches(".*\\bsafe\\b.*"), rule.id());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "vocabulary/materials.yaml, terms",
    "vocabulary/coatings.yaml, terms",
    "vocabulary/colours.yaml, terms",
    "vocabulary/defects.yaml, terms",
    "vocabulary/spellings.yaml, spellings",
    "vocabulary/css-colours.yaml, css-colours",
    "vocabulary/thicknesses.yaml, thicknesses",
    "vocabulary/units.yaml, units",
    "hazards/rules.yaml, cautions"
  })
  void everyFileMatchesItsSchema(String file, String schema) throws IOException {
    String name = "shared/schemas/" + schema + ".schema.json";
    try (InputStream in = getClass().getClassLoader().getResourceAsStream(name)) {
      var messages =
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
              .getSchema(in)
              .validate(new ObjectMapper().valueToTree(CatalogFiles.tree(file)));
      assertEquals(Set.of(), messages);
    }
  }
}

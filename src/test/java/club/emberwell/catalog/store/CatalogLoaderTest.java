package club.emberwell.catalog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionRule.Says;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.listing.Part;
import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import org.hibernate.Session;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a start makes of the data files; every test is rolled back. */
@QuarkusTest
class CatalogLoaderTest {
  private static final Deed DEED = new Deed(TwoModerators.ONE, "a test");

  @Inject Session session;
  @Inject TwoModerators moderators;
  @Inject CatalogLoader loader;
  @Inject CatalogStore store;
  @Inject TermCare care;
  @Inject CautionCare cautionCare;

  @BeforeEach
  void moderatorsAreThere() {
    moderators.join();
  }

  @Inject CatalogService service;

  private static Term changed(Term term, String label, List<String> synonyms) {
    return new Term(
        term.kind(),
        term.slug(),
        new Term.Words(label, synonyms, term.note()),
        term.parent(),
        term.respondsAlike(),
        term.hex(),
        new Term.Standing(term.deprecated(), null, term.origin(), 1));
  }

  private static List<Term> filesWith(String slug, String label, String... synonyms) {
    return CatalogFiles.terms().stream()
        .map(t -> t.slug().equals(slug) ? changed(t, label, List.of(synonyms)) : t)
        .toList();
  }

  /** As before the very first start, whatever other tests did to the club's words. */
  private void withoutWords() {
    for (String statement :
        List.of(
            "set local session_replication_role = replica",
            "delete from synonym",
            "delete from caution",
            "delete from term",
            "set local session_replication_role = origin")) {
      session.createNativeMutationQuery(statement).executeUpdate();
    }
  }

  @Test
  @TestTransaction
  void afterTheFirstStartTheDatabaseSaysWhatTheFilesSay() {
    withoutWords();
    assertTrue(loader.load(CatalogFiles.terms(), CatalogFiles.cautions()));
    assertEquals(
        CatalogFiles.terms().size(), store.allTerms().size(), "every term of the files, no more");
    assertEquals(
        new Vocabulary(distinct(CatalogFiles.terms()), CatalogFiles.folding()).contentHash(),
        store.read().vocabulary().contentHash());
    assertEquals(CatalogFiles.catalog().cautions().rules(), store.read().cautions().rules());
  }

  private static List<Term> distinct(List<Term> terms) {
    return terms.stream()
        .map(t -> changed(t, t.label(), t.synonyms().stream().distinct().toList()))
        .toList();
  }

  @Test
  @TestTransaction
  void readingTheSameFilesAgainChangesNothing() {
    long version = store.version();
    assertFalse(loader.load(CatalogFiles.terms(), CatalogFiles.cautions()));
    assertEquals(version, store.version());
  }

  @Test
  @TestTransaction
  void aChangedFileUpdatesATermNobodyEditedAndKeepsItsHistory() {
    assertTrue(
        loader.load(filesWith("pewter", "Pewter alloy", "grey tin"), CatalogFiles.cautions()));
    Term term = store.read().vocabulary().term(TermKind.MATERIAL, "pewter").orElseThrow();
    assertEquals("Pewter alloy", term.label());
    assertEquals(List.of("grey tin"), term.synonyms());
    assertEquals(2, term.version());
    CatalogRevision revision = service.history("term", "material:pewter", Part.FIRST).rows().get(0);
    assertEquals(CatalogLoader.WHO, revision.who());
    assertEquals("Pewter", revision.before().get("label"));
    assertEquals("Pewter alloy", revision.after().get("label"));
  }

  @Test
  @TestTransaction
  void whatAModeratorChangedStaysWhenTheFilesChange() {
    Term term = store.read().vocabulary().term(TermKind.MATERIAL, "pewter").orElseThrow();
    TermDraft draft = new TermDraft("Our pewter", term.parent(), false, null, null, false);
    care.edit(TermKind.MATERIAL, "pewter", term.version(), draft, DEED);
    care.addSynonym(TermKind.MATERIAL, "pewter", "tankard metal", false, DEED);
    care.removeSynonym(TermKind.MATERIAL, "pewter", "Zinn", DEED);
    loader.load(filesWith("pewter", "Pewter alloy", "Zinn", "grey tin"), CatalogFiles.cautions());
    Term after = store.read().vocabulary().term(TermKind.MATERIAL, "pewter").orElseThrow();
    assertEquals("Our pewter", after.label());
    assertEquals(List.of("grey tin", "tankard metal"), after.synonyms());
  }

  @Test
  @TestTransaction
  void aTermThatLeftTheFilesStays() {
    List<Term> fewer = new ArrayList<>(CatalogFiles.terms());
    fewer.removeIf(term -> term.slug().equals("pewter"));
    loader.load(fewer, List.of());
    assertTrue(store.read().vocabulary().term(TermKind.MATERIAL, "pewter").isPresent());
    assertFalse(store.read().cautions().rules().isEmpty());
  }

  @Test
  @TestTransaction
  void aCautionAModeratorRemovedDoesNotComeBackWithTheFiles() {
    cautionCare.proposeRemoval("food-hygiene", DEED);
    cautionCare.confirmRemoval("food-hygiene", new Deed(TwoModerators.TWO, "agreed"));
    List<CautionRule> changed =
        CatalogFiles.cautions().stream()
            .map(
                r ->
                    new CautionRule(
                        r.id(),
                        r.weight(),
                        r.scope(),
                        new Says(r.agent(), r.hazard(), r.claim(), "Changed advice."),
                        r.handling(),
                        r.evidence(),
                        r.limits()))
            .toList();
    loader.load(CatalogFiles.terms(), changed);
    List<CautionRule> rules = store.read().cautions().rules();
    assertTrue(rules.stream().noneMatch(rule -> rule.id().equals("food-hygiene")));
    assertTrue(rules.stream().allMatch(rule -> rule.advice().equals("Changed advice.")));
  }
}

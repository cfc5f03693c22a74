package club.emberwell.catalog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The snapshot follows committed changes, of this node and of others. */
@QuarkusTest
class CatalogServiceTest {
  private static final Deed DEED = new Deed(TwoModerators.ONE, "a test");

  @Inject TwoModerators moderators;
  @Inject CatalogService service;
  @Inject CatalogStore store;
  @Inject TermCare care;
  @Inject SynonymRepository synonyms;

  @BeforeEach
  void moderatorsAreThere() {
    moderators.join();
  }

  @Test
  void theSnapshotIsTheSameObjectUntilSomethingChanges() {
    assertSame(service.snapshot(), service.snapshot());
    assertTrue(service.vocabulary().term(TermKind.MATERIAL, "oak").isPresent());
  }

  @Test
  void aCommittedChangeShowsAtOnceAndARolledBackOneNever() {
    care.addSynonym(TermKind.MATERIAL, "slate", "service test tile", false, DEED);
    assertEquals("slate", slug("service test tile"));
    QuarkusTransaction.begin();
    care.removeSynonym(TermKind.MATERIAL, "slate", "service test tile", DEED);
    QuarkusTransaction.rollback();
    assertEquals("slate", slug("service test tile"));
    care.removeSynonym(TermKind.MATERIAL, "slate", "service test tile", DEED);
    assertEquals("", slug("service test tile"));
  }

  @Test
  void aChangeOfAnotherNodeIsSeenByItsVersionNumber() {
    service.snapshot();
    QuarkusTransaction.requiringNew().run(() -> anotherNodeSpells("other node tile"));
    service.poll();
    assertEquals("slate", slug("other node tile"));
    care.removeSynonym(TermKind.MATERIAL, "slate", "other node tile", DEED);
  }

  private void anotherNodeSpells(String text) {
    synonyms.persist(SynonymEntity.of(TermEntity.id(TermKind.MATERIAL, "slate"), text, Term.CLUB));
    synonyms.flush();
    synonyms
        .getEntityManager()
        .createNativeQuery("update catalog_state set version = version + 1")
        .executeUpdate();
  }

  private String slug(String text) {
    return service.vocabulary().resolve(TermKind.MATERIAL, text).term().map(Term::slug).orElse("");
  }
}

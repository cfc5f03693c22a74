package club.emberwell.catalog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionEvidence;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionScope;
import club.emberwell.listing.Part;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Moderators and cautions; every test is rolled back. */
@QuarkusTest
class CautionCareTest {
  private static final Deed ONE = new Deed(TwoModerators.ONE, "a test");
  private static final Deed TWO = new Deed(TwoModerators.TWO, "agreed");

  @Inject TwoModerators moderators;
  @Inject CautionCare care;
  @Inject CatalogStore store;

  @BeforeEach
  void moderatorsAreThere() {
    moderators.join();
  }

  @Inject CatalogService service;

  private static CautionRule rule(String id, CautionClass weight, String material, String source) {
    return new CautionRule(
        id,
        weight,
        new CautionScope(List.of(material), List.of(), false, null, List.of(), List.of(), null),
        new CautionRule.Says("smoke", "irritates", "It smokes.", "Extraction."),
        CautionRule.Handling.NOT_SAID,
        new CautionEvidence(source, "general", "judgement", false, null, List.of()),
        List.of());
  }

  private boolean stands(String id) {
    return store.read().cautions().rules().stream().anyMatch(rule -> rule.id().equals(id));
  }

  @Test
  @TestTransaction
  void anAddedCautionGoesWithItsMaterialAndAllBelow() {
    CatalogChange change = care.add(rule("new", CautionClass.BAN, "oak", "our club"), ONE);
    assertEquals(Set.of("oak"), change.slugs());
    assertTrue(store.read().cautions().ban("oak", null, null, null).isPresent());
  }

  @Test
  @TestTransaction
  void aCautionWithoutASourceIsRefusedAtItsField() {
    EntryRefused refused =
        assertThrows(
            EntryRefused.class,
            () -> care.add(rule("new", CautionClass.CARE, "no-such", " "), ONE));
    assertEquals(
        Set.of("/evidence/source", "/scope/materials"),
        refused.remarks().stream().map(Remark::field).collect(Collectors.toSet()));
  }

  @Test
  @TestTransaction
  void anEditIsKeptInTheHistoryAndNeedsTheCurrentVersion() {
    int version = care.one("food-hygiene").version();
    CautionRule was = care.one("food-hygiene").rule();
    care.edit(rule("food-hygiene", CautionClass.BAN, "food", "our club"), version, ONE);
    CatalogRevision revision = service.history("caution", "food-hygiene", Part.FIRST).rows().get(0);
    assertEquals(was.claim(), revision.before().get("claim"));
    assertEquals("It smokes.", revision.after().get("claim"));
    assertThrows(
        EntryChanged.class,
        () -> care.edit(rule("food-hygiene", CautionClass.BAN, "food", "us"), version, ONE));
  }

  @Test
  @TestTransaction
  void anEditDoesNotLiftAProhibition() {
    EntryRefused refused =
        assertThrows(
            EntryRefused.class,
            () -> care.edit(rule("abs-hydrogen-cyanide", CautionClass.CARE, "abs", "us"), 1, ONE));
    assertEquals("prohibition-lifted", refused.remarks().get(0).id());
    assertThrows(
        EntryRefused.class,
        () ->
            care.edit(
                rule("abs-hydrogen-cyanide", CautionClass.BAN, "abs-laminate", "us"), 1, ONE));
  }

  @Test
  @TestTransaction
  void aCautionGoesOnlyWhenASecondModeratorConfirms() {
    care.proposeRemoval("food-hygiene", ONE);
    assertTrue(stands("food-hygiene"), "it stands until confirmed");
    assertThrows(EntryForbidden.class, () -> care.confirmRemoval("food-hygiene", ONE));
    assertTrue(stands("food-hygiene"));
    care.confirmRemoval("food-hygiene", TWO);
    assertFalse(stands("food-hygiene"));
    assertTrue(care.one("food-hygiene").removed(), "it is kept, with who asked and why");
    assertEquals(TwoModerators.ONE, care.one("food-hygiene").removalAskedBy());
    care.restore("food-hygiene", ONE);
    assertTrue(stands("food-hygiene"));
  }

  @Test
  @TestTransaction
  void aProposalCanBeTurnedDownAndNothingIsRemovedWithoutOne() {
    assertThrows(EntryUnknown.class, () -> care.confirmRemoval("food-hygiene", TWO));
    care.proposeRemoval("food-hygiene", ONE);
    assertThrows(EntryRefused.class, () -> care.proposeRemoval("food-hygiene", TWO));
    care.keepStanding("food-hygiene", TWO);
    assertThrows(EntryUnknown.class, () -> care.confirmRemoval("food-hygiene", TWO));
  }
}

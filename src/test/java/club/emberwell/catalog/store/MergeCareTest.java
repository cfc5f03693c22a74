package club.emberwell.catalog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Merging and undoing; every test is rolled back. */
@QuarkusTest
class MergeCareTest {
  private static final Deed DEED = new Deed(TwoModerators.ONE, "the same thing");
  private static final TermKind MATERIAL = TermKind.MATERIAL;

  @Inject TwoModerators moderators;
  @Inject MergeCare care;
  @Inject TermCare terms;

  @BeforeEach
  void moderatorsAreThere() {
    moderators.join();
  }

  @Inject CatalogStore store;

  private Vocabulary now() {
    return store.read().vocabulary();
  }

  @Test
  @TestTransaction
  void aMergeAndItsUndoLeaveExactlyTheContentOfBefore() {
    String before = now().contentHash();
    List<CautionRule> rules = store.read().cautions().rules();
    care.merge(MATERIAL, "hdf", "mdf", DEED);
    assertNotEquals(before, now().contentHash());
    assertEquals("mdf", now().resolve(MATERIAL, "hardboard").term().orElseThrow().slug());
    care.undo(MATERIAL, "hdf", DEED);
    assertEquals(before, now().contentHash());
    assertEquals(rules, store.read().cautions().rules());
    assertEquals("hdf", now().resolve(MATERIAL, "hardboard").term().orElseThrow().slug());
    assertThrows(EntryUnknown.class, () -> care.undo(MATERIAL, "hdf", DEED));
  }

  @Test
  @TestTransaction
  void undoingTheFirstOfTwoChainedMergesKeepsTheSecond() {
    care.merge(MATERIAL, "fir", "spruce", DEED);
    String afterFirst = now().contentHash();
    care.merge(MATERIAL, "spruce", "pine", DEED);
    assertEquals("pine", now().successor(MATERIAL, "fir").orElseThrow().slug());
    care.undo(MATERIAL, "spruce", DEED);
    assertEquals(afterFirst, now().contentHash());
    care.merge(MATERIAL, "spruce", "pine", DEED);
    care.undo(MATERIAL, "fir", DEED);
    assertEquals("fir", now().successor(MATERIAL, "fir").orElseThrow().slug());
    assertEquals("pine", now().successor(MATERIAL, "spruce").orElseThrow().slug());
  }

  @Test
  @TestTransaction
  void theChildrenOfALoserLieBelowTheWinner() {
    CatalogChange change = care.merge(MATERIAL, "mdf", "hdf", DEED);
    assertTrue(now().descendants(MATERIAL, "hdf").contains("veneered-mdf"));
    assertEquals(Set.of("mdf", "hdf", "veneered-mdf"), change.slugs());
    assertTrue(change.spellings().contains("mdf"));
  }

  @Test
  @TestTransaction
  void aCautionOfTheLoserGoesWithTheWinner() {
    care.merge(MATERIAL, "beryllium-copper", "copper", DEED);
    assertTrue(store.read().cautions().ban("copper", null, null, null).isPresent());
    assertTrue(store.read().cautions().ban("beryllium-copper", null, null, null).isPresent());
  }

  @Test
  @TestTransaction
  void aMergeThatWouldLiftAProhibitionIsRefused() {
    EntryRefused refused =
        assertThrows(EntryRefused.class, () -> care.merge(MATERIAL, "foamed-pvc", "acrylic", DEED));
    assertEquals("prohibition-lifted", refused.remarks().get(0).id());
  }

  @ParameterizedTest
  @CsvSource({"wood, oak, merge-into-itself", "oak, oak, merge-into-itself"})
  @TestTransaction
  void aTermIsNotMergedIntoItselfOrWhatLiesBelowIt(String loser, String winner, String id) {
    EntryRefused refused =
        assertThrows(EntryRefused.class, () -> care.merge(MATERIAL, loser, winner, DEED));
    assertEquals(id, refused.remarks().get(0).id());
  }

  @Test
  @TestTransaction
  void aMergedTermTakesNoChangeUntilTheMergeIsUndone() {
    care.merge(MATERIAL, "hdf", "mdf", DEED);
    EntryRefused refused =
        assertThrows(
            EntryRefused.class, () -> terms.addSynonym(MATERIAL, "hdf", "hard thing", false, DEED));
    assertEquals("term-merged", refused.remarks().get(0).id());
    assertThrows(EntryRefused.class, () -> care.merge(MATERIAL, "oak", "hdf", DEED));
  }

  @Test
  @TestTransaction
  void aPreviewSaysWhatWouldMoveAndMovesNothing() {
    String before = now().contentHash();
    MergePreview preview = care.preview(MATERIAL, "mdf", "oak");
    assertEquals(List.of("veneered-mdf"), preview.children().stream().map(Term::slug).toList());
    assertTrue(preview.spellings().contains("MDF"));
    assertEquals(
        Set.of(),
        preview.cautionsLost().stream().map(CautionRule::id).collect(Collectors.toSet()),
        "the caution names mdf itself, so it follows");
    assertEquals(before, now().contentHash());
    assertEquals(
        List.of("pvc-hydrogen-chloride"),
        care.preview(MATERIAL, "foamed-pvc", "acrylic").cautionsLost().stream()
            .map(CautionRule::id)
            .toList());
  }
}

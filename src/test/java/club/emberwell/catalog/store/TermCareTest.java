package club.emberwell.catalog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Match;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.listing.Part;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Moderators add, edit, spell and file; every test is rolled back. */
@QuarkusTest
class TermCareTest {
  private static final Deed DEED = new Deed(TwoModerators.ONE, "a test");
  private static final TermKind MATERIAL = TermKind.MATERIAL;

  @Inject TwoModerators moderators;
  @Inject TermCare care;
  @Inject CatalogStore store;
  @Inject CatalogService service;
  @Inject UnfiledRepository unfiled;

  @BeforeEach
  void moderatorsAreThere() {
    moderators.join();
  }

  private static TermDraft draft(String label, String parent) {
    return new TermDraft(label, parent, false, null, null, false);
  }

  private Match resolve(String text) {
    return store.read().vocabulary().resolve(MATERIAL, text);
  }

  private static String remark(Runnable deed) {
    return assertThrows(EntryRefused.class, deed::run).remarks().get(0).id();
  }

  @Test
  @TestTransaction
  void anAddedTermIsFoundInheritsItsCautionsAndSaysWhatChanged() {
    long before = store.version();
    CatalogChange change = care.add(MATERIAL, "pvc-pipe", draft("PVC drain pipe", "pvc"), DEED);
    assertEquals(before + 1, change.version());
    assertEquals(Set.of("pvc-pipe"), change.slugs());
    assertTrue(change.spellings().contains("pvcdrainpipe"));
    Term term = resolve("pvc drain pipes").term().orElseThrow();
    assertEquals(Term.CLUB, term.origin());
    assertTrue(store.read().cautions().ban("pvc-pipe", null, null, null).isPresent());
  }

  @ParameterizedTest
  @CsvSource({
    "Pewter, , Something, slug-unreadable",
    "'', , Something, slug-unreadable",
    "a--b, , Something, slug-unreadable",
    "pewter, , Something, slug-taken",
    "new-thing, , '', label-missing",
    "new-thing, , '???', label-missing",
    "new-thing, , Baltic Birch, spelling-taken",
    "new-thing, no-such, Something, parent-unknown"
  })
  @TestTransaction
  void aTermThatCannotStandIsRefused(String slug, String parent, String label, String id) {
    assertEquals(id, remark(() -> care.add(MATERIAL, slug, draft(label, parent), DEED)));
  }

  @Test
  @TestTransaction
  void aHexCodeIsForColoursOnly() {
    TermDraft hex = new TermDraft("Something", null, false, null, "#123456", false);
    assertEquals("hex-unreadable", remark(() -> care.add(MATERIAL, "new-thing", hex, DEED)));
    care.add(TermKind.COLOUR, "new-thing", hex, DEED);
    assertEquals("new-thing", store.read().colours().name("#123457").orElseThrow().term().slug());
  }

  @Test
  @TestTransaction
  void anEditNeedsTheVersionItWasBasedOn() {
    int version = service.vocabulary().term(MATERIAL, "pewter").orElseThrow().version();
    care.edit(MATERIAL, "pewter", version, draft("Pewter ware", "metal"), DEED);
    EntryChanged stale =
        assertThrows(
            EntryChanged.class,
            () -> care.edit(MATERIAL, "pewter", version, draft("Other", "metal"), DEED));
    assertEquals(version + 1, stale.version());
    assertEquals("pewter", resolve("Pewter ware").term().orElseThrow().slug());
  }

  @Test
  @TestTransaction
  void aTermCannotHangBelowItself() {
    assertEquals(
        "parent-below",
        remark(() -> care.edit(MATERIAL, "wood", 1, draft("Wood", "birch-plywood"), DEED)));
  }

  @Test
  @TestTransaction
  void movingATermAwayFromItsProhibitionIsRefused() {
    assertEquals(
        "prohibition-lifted",
        remark(() -> care.edit(MATERIAL, "foamed-pvc", 1, draft("Foamed board", "acrylic"), DEED)));
  }

  @Test
  @TestTransaction
  void aSpellingIsAddedTakenBackAndAddedAgain() {
    CatalogChange added = care.addSynonym(MATERIAL, "slate", "roofing shingle", false, DEED);
    assertEquals(Set.of("roofingshingle"), added.spellings());
    assertEquals("slate", resolve("Roofing-Shingles").term().orElseThrow().slug());
    care.removeSynonym(MATERIAL, "slate", "roofing shingle", DEED);
    assertTrue(resolve("roofing shingle").term().isEmpty());
    assertThrows(
        EntryUnknown.class, () -> care.removeSynonym(MATERIAL, "slate", "roofing shingle", DEED));
    care.addSynonym(MATERIAL, "slate", "roofing shingle", false, DEED);
    assertEquals("slate", resolve("roofing shingle").term().orElseThrow().slug());
  }

  @Test
  @TestTransaction
  void aSpellingOfAnotherTermIsRefusedUnlessMeantToBeAmbiguous() {
    assertEquals(
        "spelling-taken", remark(() -> care.addSynonym(MATERIAL, "slate", "Inox", false, DEED)));
    CatalogChange change = care.addSynonym(MATERIAL, "slate", "Inox", true, DEED);
    assertEquals(Set.of("slate", "stainless-steel"), change.slugs());
    assertEquals(Match.Outcome.AMBIGUOUS, resolve("inox").outcome());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  ", "???", "two\nlines", "nul\u0000"})
  @TestTransaction
  void anUnreadableSpellingIsRefused(String text) {
    assertEquals(
        "spelling-unreadable", remark(() -> care.addSynonym(MATERIAL, "slate", text, false, DEED)));
  }

  /** For the time of a test: whatever other classes wrote that nobody filed. */
  private void nothingWaits() {
    unfiled.deleteAll();
  }

  @Test
  @TestTransaction
  void oneRowIsQueuedForAllSpellingsThatFoldAlike() {
    nothingWaits();
    service.queueUnfiled(MATERIAL, "Moon Rock", Instant.now());
    service.queueUnfiled(MATERIAL, "moon-rocks", Instant.now());
    service.queueUnfiled(MATERIAL, "MOONROCK", Instant.now());
    service.queueUnfiled(TermKind.COATING, "moon rock", Instant.now());
    service.queueUnfiled(MATERIAL, "???", Instant.now());
    service.queueUnfiled(MATERIAL, "nul\u0000 byte " + "x".repeat(500), Instant.now());
    List<Unfiled> waiting = service.waiting(Part.FIRST).rows();
    Unfiled first = waiting.get(0);
    assertEquals("Moon Rock", first.written());
    assertEquals(3, first.count());
    assertEquals(3, service.waiting(Part.FIRST).rows().size());
    assertTrue(waiting.stream().allMatch(u -> u.written().length() <= CatalogLimits.TEXT));
  }

  @Test
  @TestTransaction
  void aFiledTextBecomesASpellingAndLeavesTheQueue() {
    nothingWaits();
    service.queueUnfiled(MATERIAL, "moon rock", Instant.now());
    UUID id = unfiled.find("folded", "moonrock").firstResult().id;
    CatalogChange change = care.file(id, "stone", DEED);
    assertEquals(Set.of("moonrock"), change.spellings());
    assertEquals("stone", resolve("Moon Rocks").term().orElseThrow().slug());
    assertEquals(0, service.waiting(Part.FIRST).rows().size());
    assertThrows(EntryUnknown.class, () -> care.file(id, "slate", DEED));
    assertEquals(
        "filed",
        service.history("unfiled", id.toString(), Part.FIRST).rows().get(0).after().get("state"));
  }

  @Test
  @TestTransaction
  void aTextThatWasFiledWaitsAgainOnceItsSpellingIsTakenBack() {
    nothingWaits();
    service.queueUnfiled(MATERIAL, "moon rock", Instant.now());
    UUID id = unfiled.find("folded", "moonrock").firstResult().id;
    care.file(id, "stone", DEED);
    care.removeSynonym(MATERIAL, "stone", "moon rock", DEED);
    service.queueUnfiled(MATERIAL, "moon rock", Instant.now());
    assertEquals(1, service.waiting(Part.FIRST).rows().size());
  }

  @Test
  @TestTransaction
  void aDismissedTextStaysDismissedHoweverOftenItIsWritten() {
    nothingWaits();
    service.queueUnfiled(MATERIAL, "asdf", Instant.now());
    care.dismiss(unfiled.find("folded", "asdf").firstResult().id, DEED);
    service.queueUnfiled(MATERIAL, "asdf", Instant.now());
    assertEquals(0, service.waiting(Part.FIRST).rows().size());
  }

  @Test
  void aDeedNeedsAReason() {
    assertEquals("reason-missing", remark(() -> new Deed(TwoModerators.ONE, "  ")));
  }

  @Test
  @TestTransaction
  void theHistoryTellsWhoChangedWhatAndWhy() {
    care.addSynonym(MATERIAL, "slate", "roofing shingle", false, DEED);
    CatalogRevision revision = service.history("term", "material:slate", Part.FIRST).rows().get(0);
    assertEquals(TwoModerators.ONE, revision.by());
    assertEquals("a test", revision.why());
    assertFalse(revision.before().get("synonyms").toString().contains("roofing shingle"));
    assertTrue(revision.after().get("synonyms").toString().contains("roofing shingle"));
  }
}

package club.emberwell.desk.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.desk.Cast;
import club.emberwell.entry.Decision;
import club.emberwell.entry.Entries;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.report.ReportService;
import club.emberwell.report.photo.Photos;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.SearchQuery;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;

/** What each rule notices and leaves alone; the numbers are our own choice, not a standard's. */
@QuarkusTest
class RulesTest {
  @Inject Cast cast;
  @Inject Rules rules;
  @Inject RuleRunner runner;
  @Inject EntryLife life;
  @Inject Entries entries;
  @Inject Photos photos;
  @Inject ReportService reports;
  @Inject SearchService search;

  private List<String> noted(EntryRef ref) {
    return rules.on(cast.moderator(), ref).stream().map(n -> n.rule().code()).toList();
  }

  private void await(BooleanSupplier done) {
    Instant end = Instant.now().plusSeconds(20);
    while (!done.getAsBoolean() && Instant.now().isBefore(end)) {
      runner.some();
      Thread.yield();
    }
    assertTrue(done.getAsBoolean());
  }

  /** Sets a rule for the time of some work. */
  private void with(String code, double threshold, Runnable work) {
    Actor moderator = cast.moderator();
    Rule was = rules.one(moderator, code);
    rules.set(moderator, code, Rule.NOTE, threshold, null, was.version());
    try {
      work.run();
    } finally {
      Rule now = rules.one(moderator, code);
      rules.set(moderator, code, was.mode(), was.threshold(), was.minutes(), now.version());
    }
  }

  @Test
  void aBurstIsNotedFromTheEntryThatMakesItOneAndNothingIsHeld() {
    with(
        "burst",
        4,
        () -> {
          Actor author = cast.member();
          EntryRef first = cast.report(author);
          EntryRef second = cast.report(author);
          EntryRef third = cast.report(author);
          EntryRef fourth = cast.report(author);
          await(() -> noted(fourth).contains("burst"));
          assertEquals(List.of(), noted(first));
          assertEquals(List.of(), noted(second));
          assertEquals(List.of(), noted(third));
          assertEquals(EntryState.LIVE, entries.get(fourth).state());
        });
  }

  @Test
  void theSameWordsAreNotedAtTheThirdTime() {
    Actor author = cast.member();
    String words = "The same long words about something, once more " + UUID.randomUUID();
    EntryRef first = cast.question(author, words);
    EntryRef second = cast.question(author, words);
    EntryRef other = cast.question(cast.member(), words);
    EntryRef third = cast.question(author, words);
    await(() -> noted(third).contains("repeated-text"));
    assertEquals(List.of(), noted(first));
    assertEquals(List.of(), noted(second));
    assertEquals(List.of(), noted(other));
  }

  @Test
  void aLinkIsNotedWhileItsAuthorIsNewAndNotAfterwards() {
    Actor known = cast.member();
    for (int i = 0; i < 5; i++) {
      cast.report(known);
    }
    EntryRef trusted = cast.question(known, "As on https://maker.example/lens it says so.");
    EntryRef fresh = cast.question(cast.member(), "As on https://maker.example/lens it says so.");
    await(() -> noted(fresh).contains("newcomer-links"));
    assertEquals(List.of(), noted(trusted));
  }

  @Test
  void aDoseFarFromAllOthersIsNotedAndOneAmongThemIsNot() {
    String material = "beech";
    for (int i = 0; i < 9; i++) {
      cast.report(cast.member(), material, (380 + 5 * i) + " mm/s", "Words " + UUID.randomUUID());
    }
    SearchQuery query = SearchQuery.everything().withFacet("material", List.of(material));
    await(() -> search.columns(query).size() >= 9);
    EntryRef usual = cast.report(cast.member(), material, "402 mm/s", "Usual.");
    EntryRef odd = cast.report(cast.member(), material, "20 mm/s", "Very slow.");
    await(() -> noted(odd).contains("far-outside"));
    assertEquals(List.of(), noted(usual));
    assertTrue(rules.on(cast.moderator(), odd).get(0).detail().contains("above"));
  }

  @Test
  void aPhotoIsTakenOutOfSightAndBroughtBackByAnotherPersonOnly() {
    Actor author = cast.moderator();
    EntryRef report = cast.report(author);
    UUID id = UUID.randomUUID();
    cast.run(
        ("insert into entry (id, kind, member_id, state, version, parent_id, title, created_at,"
                + " updated_at) values ('%s', 'photo', '%s', 'live', 1, '%s', 'A photo', now(),"
                + " now())")
            .formatted(id, author.memberId(), report.id()));
    cast.run(
        ("insert into photo (id, width, height, size_bytes, picture, thumb)"
                + " values ('%s', 1, 1, 2, '\\x00', '\\x00')")
            .formatted(id));
    EntryRef photo = new EntryRef(EntryKind.PHOTO, id);
    Actor moderator = cast.moderator();
    assertThrows(EntryForbidden.class, () -> life.decide(author, photo, Decision.REMOVE, "Mine."));
    life.decide(moderator, photo, Decision.REMOVE, "A face is on it.");
    assertEquals(0, reports.get(author, report.id()).photos().size());
    life.decide(moderator, photo, Decision.RESTORE, "The face agreed.");
    assertEquals(1, reports.get(author, report.id()).photos().size());
  }
}

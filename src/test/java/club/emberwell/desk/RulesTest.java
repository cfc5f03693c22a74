package club.emberwell.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.report.Photos;
import club.emberwell.report.ReportService;
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
  @Inject Decisions decisions;
  @Inject Photos photos;
  @Inject ReportService reports;
  @Inject SearchService search;

  private List<String> noted(ItemRef ref) {
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
          ItemRef first = cast.report(author);
          ItemRef second = cast.report(author);
          ItemRef third = cast.report(author);
          ItemRef fourth = cast.report(author);
          await(() -> noted(fourth).contains("burst"));
          assertEquals(List.of(), noted(first));
          assertEquals(List.of(), noted(second));
          assertEquals(List.of(), noted(third));
          assertEquals("LIVE", decisions.item(cast.moderator(), fourth).state());
        });
  }

  @Test
  void theSameWordsAreNotedAtTheThirdTime() {
    Actor author = cast.member();
    String words = "The same long words about something, once more " + UUID.randomUUID();
    ItemRef first = cast.question(author, words);
    ItemRef second = cast.question(author, words);
    ItemRef other = cast.question(cast.member(), words);
    ItemRef third = cast.question(author, words);
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
    ItemRef trusted = cast.question(known, "As on https://maker.example/lens it says so.");
    ItemRef fresh = cast.question(cast.member(), "As on https://maker.example/lens it says so.");
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
    ItemRef usual = cast.report(cast.member(), material, "402 mm/s", "Usual.");
    ItemRef odd = cast.report(cast.member(), material, "20 mm/s", "Very slow.");
    await(() -> noted(odd).contains("far-outside"));
    assertEquals(List.of(), noted(usual));
    assertTrue(rules.on(cast.moderator(), odd).get(0).detail().contains("above"));
  }

  @Test
  void aPhotoIsTakenOutOfSightAndBroughtBackByAnotherPersonOnly() {
    Actor author = cast.moderator();
    ItemRef report = cast.report(author);
    UUID id = UUID.randomUUID();
    cast.run(
        ("insert into photo (id, report_id, member_id, width, height, size_bytes, picture, thumb,"
                + " created_at) values ('%s', '%s', '%s', 1, 1, 2, '\\x00', '\\x00', now())")
            .formatted(id, report.id(), author.memberId()));
    ItemRef photo = new ItemRef(ItemKind.PHOTO, id);
    Actor moderator = cast.moderator();
    assertThrows(
        EntryForbidden.class, () -> decisions.decide(author, photo, Action.REMOVE, "Mine."));
    decisions.decide(moderator, photo, Action.REMOVE, "A face is on it.");
    assertEquals(0, reports.get(author, report.id()).photos().size());
    decisions.decide(moderator, photo, Action.RESTORE, "The face agreed.");
    assertEquals(1, reports.get(author, report.id()).photos().size());
  }
}

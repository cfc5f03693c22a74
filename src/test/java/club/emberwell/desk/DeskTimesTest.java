package club.emberwell.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import club.emberwell.remark.EntryRefused;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Days begin where the moderator is, also where a clock is put forward or back. */
class DeskTimesTest {
  private static final String AUCKLAND = "Pacific/Auckland";
  private static final String LOS_ANGELES = "America/Los_Angeles";

  private static boolean is(String word, String entry, String now, String zone) {
    Instant since =
        DeskTimes.read(
            "/since", word, Instant.parse(now).atZone(DeskTimes.zone(zone).orElseThrow()));
    return !Instant.parse(entry).isBefore(since);
  }

  private static void todayFor(String entry, String now, boolean auckland, boolean losAngeles) {
    assertEquals(auckland, is(DeskTimes.TODAY, entry, now, AUCKLAND), entry + ", Auckland");
    assertEquals(losAngeles, is(DeskTimes.TODAY, entry, now, LOS_ANGELES), entry + ", LA");
  }

  @Test
  void theSameEntryIsOfTodayForOneModeratorAndNotForAnother() {
    // Tuesday 9:00 in Auckland, Monday noon in Los Angeles
    String now = "2026-01-12T20:00:00Z";
    todayFor("2026-01-12T10:59:00Z", now, false, true);
    todayFor("2026-01-12T11:00:00Z", now, true, true);
    todayFor("2026-01-12T07:59:00Z", now, false, false);
    // Tuesday 22:00 and Tuesday 1:00
    now = "2026-01-13T09:00:00Z";
    todayFor("2026-01-12T11:00:00Z", now, true, false);
    todayFor("2026-01-13T08:00:00Z", now, true, true);
  }

  @Test
  void theWeekOfOneBeginsWhereThatOfAnotherHasNotEnded() {
    // Monday 8:00 in Auckland, Sunday 11:00 in Los Angeles
    String now = "2026-01-11T19:00:00Z";
    String entry = "2026-01-11T10:30:00Z";
    assertEquals(false, is(DeskTimes.WEEK, entry, now, AUCKLAND));
    assertEquals(true, is(DeskTimes.WEEK, entry, now, LOS_ANGELES));
    assertEquals(true, is(DeskTimes.WEEK, "2026-01-05T08:00:00Z", now, LOS_ANGELES));
    assertEquals(false, is(DeskTimes.WEEK, "2026-01-05T07:59:00Z", now, LOS_ANGELES));
  }

  @Test
  void aDayBeginsAtTheMidnightBeforeTheClockWasPutForward() {
    // Sunday 8 March 2026, noon in Los Angeles, where the clock went from 2 to 3
    String now = "2026-03-08T19:00:00Z";
    todayFor("2026-03-08T08:00:00Z", now, false, true);
    todayFor("2026-03-08T07:59:00Z", now, false, false);
    // the next day begins an hour earlier by UTC; its week began by the clock of winter
    now = "2026-03-09T18:00:00Z";
    todayFor("2026-03-09T07:00:00Z", now, false, true);
    todayFor("2026-03-09T06:59:00Z", now, false, false);
    assertEquals(
        true, is(DeskTimes.WEEK, "2026-03-02T08:00:00Z", "2026-03-08T19:00:00Z", LOS_ANGELES));
    assertEquals(
        false, is(DeskTimes.WEEK, "2026-03-02T07:59:00Z", "2026-03-08T19:00:00Z", LOS_ANGELES));
    assertEquals(true, is(DeskTimes.WEEK, "2026-03-09T07:00:00Z", now, LOS_ANGELES));
  }

  @Test
  void aDayBeginsAtTheMidnightBeforeTheClockWasPutBack() {
    // Sunday 5 April 2026, 20:00 in Auckland, where the clock went from 3 to 2; 1:00 in Los Angeles
    String now = "2026-04-05T08:00:00Z";
    todayFor("2026-04-04T11:00:00Z", now, true, false);
    todayFor("2026-04-04T10:59:00Z", now, false, false);
    // half past two comes twice, and both times are of that day
    todayFor("2026-04-04T13:30:00Z", now, true, false);
    todayFor("2026-04-04T14:30:00Z", now, true, false);
    // the next day begins an hour later by UTC
    todayFor("2026-04-05T11:59:00Z", "2026-04-06T01:00:00Z", false, true);
    todayFor("2026-04-05T12:00:00Z", "2026-04-06T01:00:00Z", true, true);
  }

  @Test
  void whereThereWasNoMidnightTheDayBeginsAtTheFirstMomentOfIt() {
    String saoPaulo = "America/Sao_Paulo";
    String now = "2018-11-04T15:00:00Z";
    assertEquals(true, is(DeskTimes.TODAY, "2018-11-04T03:00:00Z", now, saoPaulo));
    assertEquals(false, is(DeskTimes.TODAY, "2018-11-04T02:59:00Z", now, saoPaulo));
  }

  @Test
  void whatIsTypedIsMeantInTheZoneUnlessItSaysItsOwn() {
    ZoneId zone = ZoneId.of(AUCKLAND);
    assertEquals(Instant.parse("2026-01-12T11:00:00Z"), DeskTimes.read("/at", "2026-01-13", zone));
    assertEquals(
        Instant.parse("2026-07-13T20:30:00Z"), DeskTimes.read("/at", "2026-07-14T08:30", zone));
    assertEquals(
        Instant.parse("2026-07-14T08:30:00Z"), DeskTimes.read("/at", "2026-07-14T08:30:00Z", zone));
    assertThrows(EntryRefused.class, () -> DeskTimes.read("/at", "soon", zone));
    assertEquals(Optional.empty(), DeskTimes.zone("Nowhere/Town"));
    assertEquals(Optional.empty(), DeskTimes.zone(" "));
  }
}

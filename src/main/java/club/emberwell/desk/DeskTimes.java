package club.emberwell.desk;

import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Function;

/** Times as people and programs write them; without a zone they are UTC. */
public final class DeskTimes {
  private static final List<Function<String, Instant>> FORMS =
      List.of(
          Instant::parse,
          text -> LocalDateTime.parse(text).toInstant(ZoneOffset.UTC),
          text -> LocalDate.parse(text).atStartOfDay().toInstant(ZoneOffset.UTC));

  private DeskTimes() {}

  /**
   * Reads {@code 2026-11-25}, {@code 2026-11-25T10:30} or {@code 2026-11-25T10:30:00Z}.
   *
   * @return null for an empty text
   * @throws club.emberwell.remark.EntryRefused for anything else
   */
  public static Instant read(String pointer, String text) {
    if (text == null || text.isBlank()) {
      return null;
    }
    for (Function<String, Instant> form : FORMS) {
      try {
        Instant time = form.apply(text.strip());
        // what the database can keep
        if (time.isAfter(Instant.EPOCH) && time.isBefore(Instant.EPOCH.plusSeconds(1L << 33))) {
          return time;
        }
      } catch (DateTimeException e) {
        continue;
      }
    }
    throw new EntryRefused(
        RemarkId.TIME_UNREADABLE, pointer, "Write a time like 2026-11-25 or 2026-11-25T10:30.");
  }
}

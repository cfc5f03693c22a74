package club.emberwell.desk;

import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Times as people and programs write them. */
public final class DeskTimes {
  public static final String TODAY = "today";
  public static final String WEEK = "week";
  public static final String EVERYTHING = "everything";

  private DeskTimes() {}

  /**
   * Reads {@code 2026-11-25}, {@code 2026-11-25T10:30} or {@code 2026-11-25T10:30:00Z}; without a
   * zone they are UTC.
   *
   * @return null for an empty text
   * @throws club.emberwell.remark.EntryRefused for anything else
   */
  public static Instant read(String pointer, String text) {
    return read(pointer, text, ZoneOffset.UTC);
  }

  /**
   * The same with times in a zone, and {@code today}, {@code week} (from Monday), {@code
   * everything}.
   */
  public static Instant read(String pointer, String text, ZoneId zone) {
    return read(pointer, text, ZonedDateTime.now(zone));
  }

  /** The same as it is meant at a moment where somebody is. */
  static Instant read(String pointer, String text, ZonedDateTime now) {
    if (text == null || text.isBlank()) {
      return null;
    }
    String word = text.strip();
    ZoneId zone = now.getZone();
    LocalDate today = now.toLocalDate();
    switch (word) {
      case TODAY:
        return today.atStartOfDay(zone).toInstant();
      case WEEK:
        return today
            .with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY))
            .atStartOfDay(zone)
            .toInstant();
      case EVERYTHING:
        return Instant.EPOCH.plusSeconds(1);
      default:
        return written(pointer, word, zone);
    }
  }

  private static Instant written(String pointer, String text, ZoneId zone) {
    List<Function<String, Instant>> forms =
        List.of(
            Instant::parse,
            given -> LocalDateTime.parse(given).atZone(zone).toInstant(),
            given -> LocalDate.parse(given).atStartOfDay(zone).toInstant());
    for (Function<String, Instant> form : forms) {
      try {
        Instant time = form.apply(text);
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

  /** A zone by its name, as browsers say it; empty for what is none. */
  public static Optional<ZoneId> zone(String name) {
    try {
      return name == null || name.isBlank() ? Optional.empty() : Optional.of(ZoneId.of(name));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}

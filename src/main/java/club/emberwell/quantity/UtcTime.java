package club.emberwell.quantity;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/**
 * A moment as answers and files write it: UTC, always six decimals (RFC 3339), so that texts of
 * times sort as the times do.
 */
public final class UtcTime {
  private static final DateTimeFormatter MICROSECONDS =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'").withZone(ZoneOffset.UTC);

  private UtcTime() {}

  public static String of(Instant moment) {
    return MICROSECONDS.format(moment);
  }
}

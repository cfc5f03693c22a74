package club.emberwell.member.pace;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How often something can be tried: so many tries are free in a window, then each waits twice as
 * long as the one before. Operators write {@code 5 in 1H, then 1S to 30S}.
 *
 * @param free how many tries wait for nothing
 * @param window after so long without a try, counting begins anew
 * @param first the first wait
 * @param longest where waits stop growing
 */
public record Pace(int free, Duration window, Duration first, Duration longest) {
  private static final Pattern WRITTEN = Pattern.compile("(\\d+) in (\\w+), then (\\w+) to (\\w+)");

  /** One try, and the next after a pause that does not grow. */
  static Pace every(Duration pause) {
    return new Pace(1, pause, pause, pause);
  }

  /**
   * Reads what an operator wrote.
   *
   * @throws IllegalArgumentException where it is written otherwise
   */
  public static Pace of(String written) {
    Matcher parts = WRITTEN.matcher(written.strip());
    if (!parts.matches()) {
      throw new IllegalArgumentException(
          "a pace is written like \"5 in 1H, then 1S to 30S\", not \"" + written + "\"");
    }
    return new Pace(
        Integer.parseInt(parts.group(1)),
        duration(parts.group(2)),
        duration(parts.group(3)),
        duration(parts.group(4)));
  }

  private static Duration duration(String written) {
    return Duration.parse(written.endsWith("D") ? "P" + written : "PT" + written);
  }
}

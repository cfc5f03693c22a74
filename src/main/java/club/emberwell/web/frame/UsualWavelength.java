package club.emberwell.web.frame;

import club.emberwell.laser.LaserSource;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Wavelengths that forms suggest for a source. Only suggested: members state what their machine's
 * label says. The usual lines are common practice, no source.
 */
public final class UsualWavelength {
  private UsualWavelength() {}

  /** As it can be typed. */
  public static String of(LaserSource source) {
    return source.usualNm() + " nm";
  }

  /** For a list of suggestions. */
  public static List<String> all() {
    return Stream.of(LaserSource.values()).map(UsualWavelength::of).distinct().toList();
  }

  /** "Usual: CO2 10600 nm, …". */
  public static String sentence() {
    return Stream.of(LaserSource.values())
        .map(source -> source.label() + " " + of(source))
        .collect(Collectors.joining(", ", "Usual: ", "."));
  }
}

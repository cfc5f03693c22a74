package club.emberwell.consensus;

import club.emberwell.consensus.range.Figures;
import club.emberwell.consensus.range.Recorded;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Ratio;
import java.util.Locale;

/**
 * One value of a property against another: how many times the dose it took.
 *
 * @param more the value that took more
 * @param less the other
 * @param ratio of geometric mean doses, 1 or more
 * @param adjusted its p-value, by Holm's rule over all contrasts of the range
 */
public record Contrast(Property property, String more, String less, Ratio ratio, double adjusted) {
  private static final double LEVEL = 0.05;

  /** True where different members were compared, not members with themselves. */
  public boolean weaker() {
    return ratio.kind() == Ratio.Kind.UNPAIRED;
  }

  /** True where the difference stands out from chance after all that were tried. */
  public boolean clear() {
    return adjusted <= LEVEL;
  }

  /** "White took 1.6 (1.3 to 2.0) times the dose of black, 7 members who did both." */
  public String sentence() {
    String first = Recorded.phrase(property, more);
    return first.substring(0, 1).toUpperCase(Locale.ROOT)
        + first.substring(1)
        + " took "
        + Figures.two(ratio.ratio())
        + " ("
        + Figures.two(ratio.interval().low())
        + " to "
        + Figures.two(ratio.interval().high())
        + ") times the dose of "
        + Recorded.phrase(property, less)
        + ", "
        + ratio.n()
        + (weaker() ? " different members: weaker evidence." : " members who did both.")
        + (clear() ? "" : " This may be chance.");
  }
}

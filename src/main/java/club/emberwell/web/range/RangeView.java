package club.emberwell.web.range;

import club.emberwell.consensus.SideBySide;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.MemberShare;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/**
 * A range as a page shows it.
 *
 * @param counts how much stands behind it, in words
 * @param evidence the word of evidence
 * @param evidenceClass style for it
 * @param success how often it works, or why nothing is said
 */
public record RangeView(
    String heading,
    String counts,
    String evidence,
    String evidenceClass,
    String success,
    SpreadView dose,
    List<SpreadView> settings) {
  private static final double PERCENT = 100;

  /**
   * @param scope unique in the page
   */
  public static RangeView of(Range range, UnitPreferences reader, String scope) {
    return of(range, reader, scope, Map.of());
  }

  /**
   * The same on axes it shares with others.
   *
   * @param axes by measure, canonical units
   */
  public static RangeView of(
      Range range, UnitPreferences reader, String scope, Map<Measure, SideBySide.Axis> axes) {
    Function<Spread, SpreadView> view =
        spread -> SpreadView.of(spread, reader, scope, axes.get(spread.measure()));
    return new RangeView(
        range.key().words(),
        counts(range),
        range.evidence().words(),
        "evidence-" + range.evidence().name().toLowerCase(Locale.ROOT).replace('_', '-'),
        success(range),
        range.dose().isEmpty() ? null : view.apply(range.dose()),
        range.settings().stream().map(view).toList());
  }

  private static String counts(Range range) {
    return "%s with right results, %s in %s on %s"
        .formatted(
            counted(range.counts().voices(), "member", "members"),
            counted(range.counts().trials(), "trial", "trials"),
            counted(range.counts().reports(), "report", "reports"),
            counted(range.counts().machines(), "machine", "machines"));
  }

  public static String counted(long n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }

  private static String success(Range range) {
    if (range.success().share().isEmpty()) {
      return "";
    }
    MemberShare share = range.success().share().get();
    return "Right in %s %% of tries, each member counting once (%s to %s %%, %s; %s of %s trials)."
        .formatted(
            Math.round(share.share() * PERCENT),
            Math.round(share.interval().low() * PERCENT),
            Math.round(share.interval().high() * PERCENT),
            counted(share.members(), "member", "members"),
            range.success().right(),
            range.success().trials());
  }
}

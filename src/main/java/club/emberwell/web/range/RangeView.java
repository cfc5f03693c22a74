package club.emberwell.web.range;

import club.emberwell.consensus.SideBySide;
import club.emberwell.consensus.range.Range;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.MemberShare;
import java.util.List;
import java.util.Map;

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
    return new RangeView(
        range.key().words(),
        counts(range),
        range.evidence().words(),
        "evidence-" + range.evidence().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
        success(range),
        range.dose().isEmpty() ? null : SpreadView.of(range.dose(), reader, scope, null),
        range.settings().stream().map(s -> SpreadView.of(s, reader, scope, null)).toList());
  }

  /**
   * The same on axes it shares with others.
   *
   * @param axes by measure, canonical units
   */
  public static RangeView of(
      Range range, UnitPreferences reader, String scope, Map<Measure, SideBySide.Axis> axes) {
    RangeView own = of(range, reader, scope);
    return new RangeView(
        own.heading(),
        own.counts(),
        own.evidence(),
        own.evidenceClass(),
        own.success(),
        range.dose().isEmpty()
            ? null
            : SpreadView.on(range.dose(), reader, scope, axes.get(range.dose().measure())),
        range.settings().stream()
            .map(s -> SpreadView.on(s, reader, scope, axes.get(s.measure())))
            .toList());
  }

  private static String counts(Range range) {
    return counted(range.counts().voices(), "member", "members")
        + " with right results, "
        + counted(range.counts().trials(), "trial", "trials")
        + " in "
        + counted(range.counts().reports(), "report", "reports")
        + " on "
        + counted(range.counts().machines(), "machine", "machines");
  }

  static String counted(long n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }

  private static String success(Range range) {
    if (range.success().share().isEmpty()) {
      return "";
    }
    MemberShare share = range.success().share().get();
    return "Right in "
        + Math.round(share.share() * PERCENT)
        + " % of tries, each member counting once ("
        + Math.round(share.interval().low() * PERCENT)
        + " to "
        + Math.round(share.interval().high() * PERCENT)
        + " %, "
        + counted(share.members(), "member", "members")
        + "; "
        + range.success().right()
        + " of "
        + range.success().trials()
        + " trials).";
  }
}

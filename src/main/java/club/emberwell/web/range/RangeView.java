package club.emberwell.web.range;

import club.emberwell.consensus.SideBySide;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.Success;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Evidence;
import java.util.ArrayList;
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
        evidenceClass(range.evidence()),
        success(range),
        range.dose().isEmpty() ? null : view.apply(range.dose()),
        range.settings().stream().map(view).toList());
  }

  public static String evidenceClass(Evidence evidence) {
    return "evidence-" + evidence.name().toLowerCase(Locale.ROOT).replace('_', '-');
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
    return range.success().map(RangeView::success).orElse("");
  }

  private static String success(Success success) {
    List<String> said = new ArrayList<>();
    success
        .share()
        .ifPresent(
            share -> {
              said.add("%s of %s were right.".formatted(success.right(), tests(success.trials())));
              said.add(
                  "Counting each of %s once: %s %% (uncertain: %s to %s %%)."
                      .formatted(
                          counted(share.members(), "member", "members"),
                          Math.round(share.share() * PERCENT),
                          Math.round(share.interval().low() * PERCENT),
                          Math.round(share.interval().high() * PERCENT)));
            });
    if (success.cells().cells() > 0) {
      said.add(
          "In test grids %s of %s were right."
              .formatted(
                  success.cells().right(), counted(success.cells().cells(), "cell", "cells")));
    }
    return String.join(" ", said);
  }

  private static String tests(int n) {
    return counted(n, "test", "tests");
  }
}

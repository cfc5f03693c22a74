package club.emberwell.web.trial;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.Effect;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A whole report in a line, for those who see nothing else of it. */
public final class ReportText {
  private static final Comparator<TrialSnapshot> BEST =
      Comparator.<TrialSnapshot>comparingInt(trial -> trial.effect() == Effect.RIGHT ? 0 : 1)
          .thenComparingInt(trial -> trial.quality() == null ? 0 : -trial.quality());

  private ReportText() {}

  /** "Slate: surface engraving, 10 W diode 455 nm, gantry (right, quality 4 of 5)". */
  public static String title(ReportSnapshot report, Vocabulary vocabulary, UnitPreferences reader) {
    return "%s: %s, %s (%s)"
        .formatted(
            WorkText.of(report, vocabulary, reader),
            report.process().label().toLowerCase(Locale.ROOT),
            TrialText.laser(report.laser(), reader),
            outcome(report));
  }

  /** "right, quality 4 of 5"; of a grid "9 of 25 tests right". */
  public static String outcome(ReportSnapshot report) {
    List<TrialSnapshot> trials = report.trials();
    if (trials.size() == 1) {
      return outcome(trials.get(0));
    }
    long right = trials.stream().filter(trial -> trial.effect() == Effect.RIGHT).count();
    return right + " of " + trials.size() + " tests right";
  }

  /** "right, quality 4 of 5" or "too little". */
  public static String outcome(TrialSnapshot trial) {
    String effect = trial.effect().label().toLowerCase(Locale.ROOT);
    return trial.quality() == null ? effect : effect + ", quality " + trial.quality() + " of 5";
  }

  /** "45 % (9 W) · 304.8 mm/s · 0.1 mm, nominal 0.9 J/mm²". */
  public static String line(TrialSnapshot trial, UnitPreferences reader) {
    String dose = TrialText.dose(trial, reader);
    String settings = TrialText.settings(trial, reader);
    return dose.isEmpty() ? settings : settings + ", " + dose;
  }

  /** "Slate, surface engraving, 10 W diode 455 nm, gantry: 45 % … Result: right. Posted by ada." */
  public static String sentence(ReportSnapshot report, Catalog now, UnitPreferences reader) {
    TrialSnapshot best = best(report).get(0);
    String settings =
        report.trials().size() == 1
            ? line(best, reader)
            : "best of a test grid " + line(best, reader) + " (" + outcome(best) + ")";
    String caution = caution(report, now).map(said -> " " + said).orElse("");
    return "%s, %s, %s: %s. Result: %s.%s Posted by %s."
        .formatted(
            WorkText.of(report, now.vocabulary(), reader),
            report.process().label().toLowerCase(Locale.ROOT),
            TrialText.laser(report.laser(), reader),
            settings,
            outcome(report),
            caution,
            report.author().handle());
  }

  /** The heaviest caution of its work. */
  public static Optional<String> caution(ReportSnapshot report, Catalog now) {
    return CautionMark.of(ReportCautions.of(report.work(), report.laser().source(), now.cautions()))
        .map(CautionMark::sentence);
  }

  /** Its trials, right ones of the best quality first. */
  public static List<TrialSnapshot> best(ReportSnapshot report) {
    return report.trials().stream().sorted(BEST).toList();
  }
}

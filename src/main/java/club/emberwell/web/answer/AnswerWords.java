package club.emberwell.web.answer;

import club.emberwell.consensus.answer.Next;
import club.emberwell.consensus.dose.Window;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.DoseWindow;
import club.emberwell.stats.Interval;
import club.emberwell.web.range.MeasureText;
import club.emberwell.web.range.WindowWords;
import club.emberwell.web.trial.TrialText;
import java.util.List;

/** What an answer says, in sentences. */
final class AnswerWords {
  private static final int TENTHS = 10;
  private static final List<Setting> MAIN =
      List.of(Setting.POWER, Setting.SPEED, Setting.LINE_SPACING);

  private AnswerWords() {}

  /** Whole settings in one line, passes always said: "60 % · 22 mm/s · 0.1 mm · 1 pass". */
  static String whole(Settings settings, UnitPreferences reader) {
    String rest = rest(settings, reader);
    return main(settings, reader) + (rest.isEmpty() ? "" : " · " + rest);
  }

  /** Power, speed, line spacing and passes. */
  static String main(Settings settings, UnitPreferences reader) {
    Settings main = Settings.NONE;
    for (Setting setting : MAIN) {
      main = main.with(setting, settings.values().get(setting));
    }
    String passes = settings.passes() == 1 ? "1 pass" : settings.passes() + " passes";
    return TrialText.plain(main, reader) + " · " + passes;
  }

  /** All but those. */
  static String rest(Settings settings, UnitPreferences reader) {
    Settings rest = settings.with(Setting.PASSES, null);
    for (Setting setting : MAIN) {
      rest = rest.with(setting, null);
    }
    return TrialText.plain(rest, reader);
  }

  /** From which dose to which, in one sentence, and what is not known of it. */
  static String window(Window window, MeasureText text) {
    switch (window.fit().state()) {
      case NONE_RIGHT -> {
        return WindowWords.NONE_RIGHT;
      }
      case TOO_FEW_MEMBERS -> {
        return "With tests by "
            + DoseWindow.FEWEST_MEMBERS
            + " members we can say from which dose to which it is right.";
      }
      case UNORDERED -> {
        return WindowWords.UNORDERED;
      }
      default -> {
        return edges(window, text);
      }
    }
  }

  private static String edges(Window window, MeasureText text) {
    DoseLimit low = window.lower();
    DoseLimit high = window.upper();
    boolean from = low.kind() == DoseLimit.Kind.TOLD;
    boolean to = high.kind() == DoseLimit.Kind.TOLD;
    if (!from && !to) {
      return rough(window, text);
    }
    String right =
        WindowWords.right(from ? told(low, text) : null, to ? told(high, text) : null, text);
    if (from && to) {
      return right + ".";
    }
    return right + "; " + (from ? open(high, "upper", "more") : open(low, "lower", "less")) + ".";
  }

  private static String rough(Window window, MeasureText text) {
    boolean neither =
        window.lower().kind() == DoseLimit.Kind.NOT_TRIED
            && window.upper().kind() == DoseLimit.Kind.NOT_TRIED;
    if (neither) {
      return "All tests were right so far: nobody tried less or more.";
    }
    if (window.lower().fitted() && window.upper().fitted()) {
      return "Most tests were right roughly between %s and %s %s."
          .formatted(told(window.lower(), text), told(window.upper(), text), text.unit());
    }
    return "It is not well known yet from which dose to which it is right.";
  }

  private static String open(DoseLimit limit, String end, String than) {
    return switch (limit.kind()) {
      case NOT_TRIED -> "nobody tried " + than;
      case NOT_KNOWN -> "the " + end + " end is not known yet";
      default -> "the " + end + " end is not well known";
    };
  }

  private static String told(DoseLimit limit, MeasureText text) {
    double half = limit.range().map(range -> range.width() / 2).orElse(Double.NaN);
    return text.told(limit.dose(), half);
  }

  /** Where further members would be, with its chance in everyday form, rounded down. */
  static String further(Interval band, MeasureText text) {
    double[] ends = text.ends(band.low(), band.high());
    return "%d in 10 further members would be between %s and %s."
        .formatted((int) (band.coverage() * TENTHS), text.shown(ends[0]), text.shown(ends[1]));
  }

  /** What of one's own leads to the next try. */
  static String because(Next next, MeasureText text) {
    String little = next.tooLittle() == null ? "" : text.told(next.tooLittle()) + " was too little";
    String much = next.tooMuch() == null ? "" : text.told(next.tooMuch()) + " was too much";
    if (next.contradicting()) {
      return "On your machine %s and %s %s. These do not fit each other: check focus and material."
          .formatted(little, much, text.unit());
    }
    String both = little.isEmpty() || much.isEmpty() ? little + much : little + ", " + much;
    return "On your machine %s (%s).".formatted(both, text.unit());
  }
}

package club.emberwell.web.range;

import club.emberwell.consensus.dose.Window;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.DoseWindow;
import club.emberwell.stats.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a window says, in sentences. */
public final class WindowWords {
  public static final String NONE_RIGHT = "Nothing came out right so far.";
  public static final String UNORDERED =
      "More dose did not give more effect here: something else decides.";

  private static final double PERCENT = 100;

  private WindowWords() {}

  static List<String> of(Window window, Optional<Double> middle, MeasureText text) {
    List<String> said = new ArrayList<>();
    switch (window.fit().state()) {
      case TOO_FEW_MEMBERS ->
          said.add(
              "With tests by %s members we can say more. There are %s."
                  .formatted(DoseWindow.FEWEST_MEMBERS, window.fit().members()));
      case NONE_RIGHT -> said.add(NONE_RIGHT);
      default -> {
        edges(window, text, said);
        window
            .best()
            .map(
                best ->
                    "Best chance: %s (%s %%)."
                        .formatted(dose(best.dose(), text), Math.round(best.chance() * PERCENT)))
            .ifPresent(said::add);
        if (window.best().isPresent()
            && middle.filter(window.best().get()::apartFrom).isPresent()) {
          said.add(
              "That is far from the middle of what was right, %s."
                  .formatted(dose(middle.get(), text)));
        }
      }
    }
    return List.copyOf(said);
  }

  private static void edges(Window window, MeasureText text, List<String> said) {
    boolean low = window.lower().kind() == DoseLimit.Kind.TOLD;
    boolean high = window.upper().kind() == DoseLimit.Kind.TOLD;
    if (low || high) {
      String lower = low ? told(window.lower(), text) : null;
      String upper = high ? told(window.upper(), text) : null;
      said.add(right(lower, upper, text) + ".");
    }
    if (window.fit().state() == DoseWindow.State.UNORDERED) {
      said.add(UNORDERED);
    }
    Interval tried = window.fit().observed().orElseThrow();
    open(window.lower(), "right", "less", dose(tried.low(), text), text, said);
    open(window.upper(), "too much", "more", dose(tried.high(), text), text, said);
  }

  /**
   * From which dose to which most tests were right, a sentence without its full stop.
   *
   * @param from as it is told; null = not told
   * @param to the same; one of the two at least is told
   */
  public static String right(String from, String to, MeasureText text) {
    String where =
        from == null ? "up to about " + to : to == null ? "from about " + from : between(from, to);
    String up = to == null ? " up" : "";
    return "Most tests were right " + where + " " + text.unit() + up;
  }

  private static String between(String from, String to) {
    return "between about " + from + " and " + to;
  }

  private static String told(DoseLimit limit, MeasureText text) {
    Interval range = limit.range().orElseThrow();
    return "%s (%s)".formatted(text.told(limit.dose(), range.width() / 2), text.ends(range));
  }

  private static void open(
      DoseLimit limit,
      String becomes,
      String than,
      String last,
      MeasureText text,
      List<String> said) {
    switch (limit.kind()) {
      case ROUGH -> said.add("Where it becomes %s is known only roughly.".formatted(becomes));
      case NOT_TRIED -> said.add("Nobody tried %s than %s.".formatted(than, last));
      case NOT_KNOWN -> {
        said.add("Where it becomes %s is not known yet.".formatted(becomes));
        limit
            .next()
            .map(next -> "A test at %s would tell most.".formatted(dose(next, text)))
            .ifPresent(said::add);
      }
      default -> {
        // told above
      }
    }
  }

  private static String dose(double canonical, MeasureText text) {
    return text.told(canonical) + " " + text.unit();
  }
}

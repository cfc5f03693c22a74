package club.emberwell.web.range;

import club.emberwell.consensus.Borrowing;
import club.emberwell.consensus.Contrast;
import club.emberwell.consensus.Explanation;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.RangeDetail.Findings;
import club.emberwell.consensus.dose.BetweenMembers;
import club.emberwell.consensus.range.Figures;
import club.emberwell.consensus.range.Range;
import club.emberwell.quantity.UnitPreferences;
import java.util.List;
import java.util.Optional;

/**
 * A range worked out in full, as its page shows it.
 *
 * @param between how members differ, or why that is not known; empty where the range was not worked
 *     out further
 * @param window null where the range was not worked out further
 * @param disagreement the answer about camps in a sentence, or empty
 */
public record DetailView(
    RangeView range,
    WindowView window,
    List<String> between,
    String disagreement,
    Contrasts contrasts,
    String borrowed,
    Explained explained) {
  private static final double PERCENT = 100;

  /**
   * What makes a difference.
   *
   * @param unclear what may be chance
   */
  public record Contrasts(List<String> clear, List<String> unclear) {}

  /** How all numbers came about, and from whose values. */
  public record Explained(List<Explanation> numbers, List<Voices> voices) {}

  /** The voices behind one measure. */
  public record Voices(String label, String unit, List<Voice> voices) {}

  /** One member's value. */
  public record Voice(String handle, String value, int trials, boolean aside) {}

  public static DetailView of(RangeDetail detail, UnitPreferences reader, String scope) {
    Range range = detail.range();
    MeasureText dose = new MeasureText(Range.doseMeasure(range.key()), reader);
    Optional<Findings> findings = detail.findings();
    return new DetailView(
        RangeView.of(range, reader, scope),
        findings
            .map(Findings::window)
            .map(w -> WindowView.of(w, detail.middle().map(RangeDetail.Middle::dose), reader))
            .orElse(null),
        findings.map(Findings::between).map(DetailView::between).orElse(List.of()),
        findings.map(Findings::disagreement).map(d -> d.sentence()).orElse(""),
        new Contrasts(contrasts(detail, true), contrasts(detail, false)),
        detail.borrowing().map(b -> borrowed(b, dose)).orElse(null),
        detail
            .explanation()
            .map(
                e ->
                    new Explained(
                        e.numbers(), e.voices().stream().map(v -> voices(v, reader)).toList()))
            .orElse(new Explained(List.of(), List.of())));
  }

  private static List<String> contrasts(RangeDetail detail, boolean clear) {
    return detail.findings().stream()
        .flatMap(findings -> findings.contrasts().stream())
        .filter(c -> c.clear() == clear)
        .map(Contrast::sentence)
        .toList();
  }

  private static List<String> between(BetweenMembers found) {
    if (found.estimate().isEmpty()) {
      return List.of(found.missing().orElse("Not known."));
    }
    BetweenMembers.Estimate e = found.estimate().get();
    String behind =
        "From %s and %s."
            .formatted(
                RangeView.counted(found.members(), "member", "members"),
                RangeView.counted(found.trials(), "right trial", "right trials"));
    if (!e.differ()) {
      return List.of("No difference between members can be seen yet.", behind);
    }
    if (!e.told()) {
      return List.of("Members differ, but how much is not known yet.", behind);
    }
    return List.of(
        "Members differ by a factor of %s (%s to %s): 2 in 3 lie within it of the middle."
            .formatted(
                Figures.two(e.factor()),
                Figures.two(e.interval().low()),
                Figures.two(e.interval().high())),
        "Tests by one member differ by a factor of %s.".formatted(Figures.two(e.within())),
        behind);
  }

  private static String borrowed(Borrowing b, MeasureText dose) {
    return "Borrowed from %s (%s): %s, %s. %s %% of it is borrowed; %s."
        .formatted(
            b.lenders().words(),
            RangeView.counted(b.lenders().members(), "member", "members"),
            dose.measured(b.value(), b.interval().width() / 2),
            dose.ends(b.interval()),
            Math.round((1 - b.weightOnOwn()) * PERCENT),
            b.own()
                .map(own -> "the own voices alone say " + dose.measured(own, Double.NaN))
                .orElse("nobody did exactly this"));
  }

  private static Voices voices(Explanation.Voices v, UnitPreferences reader) {
    MeasureText text = new MeasureText(v.measure(), reader);
    return new Voices(
        v.measure().label(),
        text.unit(),
        v.voices().stream()
            .map(
                one ->
                    new Voice(one.handle(), text.told(one.value(), 0), one.trials(), one.aside()))
            .toList());
  }
}

package club.emberwell.web.range;

import club.emberwell.consensus.Borrowing;
import club.emberwell.consensus.Contrast;
import club.emberwell.consensus.Explanation;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.RangeDetail.Findings;
import club.emberwell.consensus.dose.BetweenMachines;
import club.emberwell.consensus.range.Range;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.stats.Interval;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.StripPlot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A range worked out in full, as its page shows it.
 *
 * @param window null where the range was not worked out further
 * @param disagreement the answer about camps in a sentence, or empty
 */
public record DetailView(
    RangeView range,
    WindowView window,
    Between between,
    String disagreement,
    Contrasts contrasts,
    String borrowed,
    MachineView machine,
    Explained explained) {
  private static final double PERCENT = 100;

  /**
   * How machines differ, or why that is not known.
   *
   * @param said empty where the range was not worked out further
   * @param plot null where it is not known
   */
  public record Between(List<String> said, StripPlot plot) {}

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

  static DetailView of(RangeDetail detail, UnitPreferences reader, String scope) {
    Range range = detail.range();
    MeasureText dose = new MeasureText(Range.doseMeasure(range.key()), reader);
    Optional<Findings> findings = detail.findings();
    return new DetailView(
        RangeView.of(range, reader, scope),
        findings.map(Findings::window).map(w -> WindowView.of(w, reader, scope)).orElse(null),
        new Between(
            findings.map(Findings::between).map(b -> between(b, dose)).orElse(List.of()),
            findings
                .map(Findings::between)
                .flatMap(BetweenMachines::estimate)
                .map(e -> plot(e, dose, scope))
                .orElse(null)),
        findings.map(Findings::disagreement).map(d -> d.sentence()).orElse(""),
        new Contrasts(contrasts(detail, true), contrasts(detail, false)),
        detail.borrowing().map(b -> borrowed(b, dose)).orElse(null),
        detail.forMachine().map(m -> MachineView.of(m, range, reader, scope)).orElse(null),
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

  private static List<String> between(BetweenMachines found, MeasureText dose) {
    if (found.estimate().isEmpty()) {
      return List.of(found.missing().orElse("Not known."));
    }
    BetweenMachines.Estimate e = found.estimate().get();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        """
        Machines differ by a factor of %s: about two of three lie within it of the middle, above \
        or below. Repeats on one machine differ by %s. From %s and %s."""
            .formatted(
                dose.tick(e.factor()),
                dose.tick(e.within()),
                RangeView.counted(found.machines(), "machine", "machines"),
                RangeView.counted(found.trials(), "right trial", "right trials")));
    sentences.add(
        "Middle %s, 95 %% interval %s. %s"
            .formatted(
                dose.text(e.middle()),
                interval(e.middleInterval(), dose),
                BetweenMachines.MIDDLE_MEANS));
    e.next()
        .ifPresent(
            next ->
                sentences.add(
                    "Next machine %s (95 %%). %s"
                        .formatted(interval(next, dose), BetweenMachines.NEXT_MEANS)));
    return sentences;
  }

  private static String interval(Interval interval, MeasureText text) {
    double[] ends = text.ends(interval.low(), interval.high());
    return text.tick(ends[0]) + " to " + text.tick(ends[1]);
  }

  /** The middle's interval over the band for the next machine. */
  private static StripPlot plot(BetweenMachines.Estimate e, MeasureText text, String scope) {
    return StripPlot.of(
        new StripPlot.Input(
            new Caption(
                scope + "-between",
                "Middle of all machines and band for the next one",
                "The bar is the 95 % interval of the middle, the shaded stretch the band for one more machine."),
            new StripPlot.Values(new double[0], new double[0]),
            new StripPlot.Middle(
                null,
                text.value(e.middle()),
                text.ends(e.middleInterval().low(), e.middleInterval().high()),
                e.next().map(i -> text.ends(i.low(), i.high())).orElse(null)),
            new StripPlot.Scale(true, text::tick, null)));
  }

  private static String borrowed(Borrowing b, MeasureText dose) {
    return "Borrowed from %s (%s): %s, %s. %s %% of it is borrowed; %s."
        .formatted(
            b.lenders().words(),
            RangeView.counted(b.lenders().members(), "member", "members"),
            dose.text(b.value()),
            interval(b.interval(), dose),
            Math.round((1 - b.weightOnOwn()) * PERCENT),
            b.own()
                .map(own -> "the own voices alone say " + dose.text(own))
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
                    new Voice(
                        one.handle(),
                        QuantityPrinter.number(text.value(one.value()), reader.style()),
                        one.trials(),
                        one.aside()))
            .toList());
  }
}

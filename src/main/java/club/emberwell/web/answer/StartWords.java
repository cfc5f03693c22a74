package club.emberwell.web.answer;

import club.emberwell.bench.Machine;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.Next;
import club.emberwell.consensus.answer.Start;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Settable;
import club.emberwell.member.Actor;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportBrief;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.web.range.MeasureText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The sentence that answers, and what stands below it. */
final class StartWords {
  private final RangeDetail one;
  private final UnitPreferences units;
  private final MeasureText text;
  private final Optional<Machine> machine;
  private final Map<Long, ReportBrief> reports;

  private StartWords(
      RangeDetail one, Optional<Machine> machine, Actor actor, Map<Long, ReportBrief> reports) {
    this.one = one;
    this.reports = reports;
    this.units = actor.units();
    this.text = new MeasureText(Range.doseMeasure(one.range().key()), units);
    this.machine = machine;
  }

  static AnswerView.Start of(
      RangeDetail one, Optional<Machine> machine, Actor actor, Map<Long, ReportBrief> reports) {
    return new StartWords(one, machine, actor, reports).start();
  }

  private AnswerView.Start start() {
    Optional<Answer> answer = one.answer();
    Optional<Next> next = answer.flatMap(Answer::next);
    if (next.isPresent()) {
      Settable tried = settable(next.get().settings(), next.get().dose());
      return of(
          "Try next ",
          tried.settings(),
          doseWords(tried.dose()) + " " + AnswerWords.because(next.get(), text) + factor(),
          null);
    }
    AnswerView.Before before = answer.flatMap(this::before).orElse(null);
    return answer
        .flatMap(Answer::start)
        .map(start -> begun(start, settable(start.settings(), start.dose()), before))
        .orElseGet(() -> none(answer, before));
  }

  /** What was right on this machine already. */
  private Optional<AnswerView.Before> before(Answer answer) {
    return answer
        .right()
        .filter(whole -> reports.containsKey(whole.made().report()))
        .map(
            whole ->
                new AnswerView.Before(
                    AnswerWords.whole(whole.settings(), units)
                        + " ("
                        + text.told(whole.dose())
                        + " "
                        + text.unit()
                        + ")",
                    "/reports/" + reports.get(whole.made().report()).id()));
  }

  private Settable settable(Settings settings, double dose) {
    Double top = machine.map(m -> m.laser().maxSpeedMmS()).orElse(null);
    return Settable.of(settings, dose, top, units);
  }

  private AnswerView.Start begun(Start start, Settable settable, AnswerView.Before before) {
    String lowered =
        start.lowered() ? " The power is lower because your machine runs no faster." : "";
    String one =
        start.basis() == Start.Basis.ONE_TRIAL ? " This is the dose of one member's test." : "";
    String first = doseWords(settable.dose()) + one + factor() + lowered;
    return of("Start at ", settable.settings(), first, before);
  }

  /** How the machine stands to others, where it did not do this work yet. */
  private String factor() {
    return one.answer()
        .flatMap(Answer::factor)
        .map(found -> " " + found.factor().sentence())
        .orElse("");
  }

  private AnswerView.Start none(Optional<Answer> answer, AnswerView.Before before) {
    List<String> first = new ArrayList<>();
    answer.ifPresent(found -> found.refusal().stream().limit(1).forEach(first::add));
    if (machine.isPresent() && !first.isEmpty()) {
      first.add("Look at the whole settings of others below.");
    }
    boolean refused = machine.isPresent() && !first.isEmpty();
    String title =
        one.middle()
            .filter(middle -> !refused)
            .map(middle -> about(middle.dose()))
            .orElse(
                machine.isPresent() ? "No start for this machine" : "Too few tests for a range");
    return new AnswerView.Start(title, null, said(first), before, null, null, null);
  }

  /** The four that everybody sets are the title; the rest stands below. */
  private AnswerView.Start of(
      String title, Settings settings, String first, AnswerView.Before before) {
    String rest = AnswerWords.rest(settings, units);
    return new AnswerView.Start(
        title + AnswerWords.main(settings, units),
        AnswerWords.whole(settings, units),
        said(rest.isEmpty() ? List.of(first) : List.of("With " + rest + ".", first)),
        before,
        machine
            .map(m -> PostAddress.of(one.range().key(), m.id(), material(), settings, units))
            .orElse(null),
        machine
            .map(m -> PostAddress.recipe(one.range().key(), m.id(), material(), settings, units))
            .orElse(null),
        machine.map(m -> PostAddress.plan(one.range().key(), m.id(), material())).orElse(null));
  }

  /** On what the settings worked, for works that do not ask; null where nobody said it clearly. */
  private String material() {
    return one.answer().stream()
        .flatMap(
            found ->
                Stream.concat(found.start().map(Start::from).stream(), found.wholes().stream()))
        .map(whole -> reports.get(whole.made().report()))
        .filter(report -> report != null && report.work().material().slug() != null)
        .map(report -> report.work().typed(WorkProperty.MATERIAL))
        .findFirst()
        .orElse(null);
  }

  private String about(double dose) {
    boolean tried = one.range().counts().voices() > 0;
    return (tried ? "Right at about " : "Estimate: about ") + text.told(dose) + " " + text.unit();
  }

  /** The window and the next member, after what comes first; else what relatives say. */
  private List<String> said(List<String> first) {
    List<String> said = new ArrayList<>(first);
    one.findings().map(found -> AnswerWords.window(found.window(), text)).ifPresent(said::add);
    one.range()
        .dose()
        .nextMember()
        .map(band -> AnswerWords.further(band, text))
        .ifPresent(said::add);
    one.borrowing()
        .filter(borrowed -> one.range().counts().voices() == 0)
        .map(borrowed -> text.ends(borrowed.interval().low(), borrowed.interval().high()))
        .map(
            ends ->
                "Probably between %s and %s %s."
                    .formatted(text.shown(ends[0]), text.shown(ends[1]), text.unit()))
        .ifPresent(said::add);
    return said;
  }

  private String doseWords(double dose) {
    return text.told(dose) + " " + text.unit() + ".";
  }
}

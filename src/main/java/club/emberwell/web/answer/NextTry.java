package club.emberwell.web.answer;

import club.emberwell.access.CurrentActor;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.Next;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.dose.Settable;
import club.emberwell.member.Actor;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.web.range.MeasureText;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What to try next after a result of one's own, on the page of that report. */
@Named("nextTry")
@ApplicationScoped
public class NextTry {
  private final ConsensusService consensus;
  private final ReportSource reports;
  private final CurrentActor current;

  NextTry(ConsensusService consensus, ReportSource reports, CurrentActor current) {
    this.consensus = consensus;
    this.reports = reports;
    this.current = current;
  }

  /**
   * The next try.
   *
   * @param title "Try next 60 % · 22 mm/s · 0.1 mm · 1 pass"
   * @param post the form filled with it
   * @param keep the form for a recipe filled with it
   */
  public record Shown(String title, String said, String post, String keep) {}

  /** Null where there is nothing to say; only its author is told. */
  public Shown after(String id) {
    Actor actor = current.get();
    Optional<ReportSnapshot> report =
        reports.byIds(List.of(UUID.fromString(id))).stream()
            .filter(found -> actor.is(found.author().id()) && found.machine().id() != null)
            .findFirst();
    try {
      return report
          .flatMap(found -> consensus.after(found, actor))
          .flatMap(one -> shown(one, report.get(), actor))
          .orElse(null);
    } catch (IndexNotReady e) {
      return null;
    }
  }

  private static Optional<Shown> shown(RangeDetail one, ReportSnapshot report, Actor actor) {
    MeasureText text = new MeasureText(Range.doseMeasure(one.range().key()), actor.units());
    Optional<Next> next = one.answer().flatMap(Answer::next);
    return next.map(
        found -> {
          Settable settable =
              Settable.of(
                  found.settings(), found.dose(), report.laser().maxSpeedMmS(), actor.units());
          return new Shown(
              "Try next " + AnswerWords.whole(settable.settings(), actor.units()),
              "%s %s. %s"
                  .formatted(
                      text.told(settable.dose()), text.unit(), AnswerWords.because(found, text)),
              PostAddress.of(
                  one.range().key(),
                  report.machine().id(),
                  report.work().typed(WorkProperty.MATERIAL),
                  settable.settings(),
                  actor.units()),
              PostAddress.recipe(
                  one.range().key(),
                  report.machine().id(),
                  report.work().typed(WorkProperty.MATERIAL),
                  settable.settings(),
                  actor.units()));
        });
  }
}

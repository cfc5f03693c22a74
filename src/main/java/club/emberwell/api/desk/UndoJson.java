package club.emberwell.api.desk;

import club.emberwell.api.view.MemberJson;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.undo.UndoPlan;
import club.emberwell.desk.undo.UndoRun;
import club.emberwell.desk.undo.UndoStep;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The shapes of undoing. */
final class UndoJson {
  private UndoJson() {}

  /**
   * Whose deeds: a member's or a rule's; both where what a rule noticed of a member's entries was
   * decided together.
   *
   * @param since from when on
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Subject(@Nullable MemberJson member, @Nullable RuleCode rule, @Nullable Instant since) {}

  /**
   * What an undo would do.
   *
   * @param first the first of the steps
   * @param vocabularyChanges changes of the vocabulary by the member; they are undone one by one
   */
  @Schema(name = "UndoPreview")
  record PlanView(
      @JsonUnwrapped Subject subject,
      long total,
      List<UndoPlan.Count> counts,
      List<StepView> first,
      int vocabularyChanges) {
    static PlanView of(UndoPlan p, MemberJson member) {
      return new PlanView(
          new Subject(member, p.rule(), p.since()),
          p.total(),
          p.counts(),
          p.first().stream().map(StepView::of).toList(),
          p.vocabulary());
    }
  }

  /** One step on one thing. */
  @Schema(name = "UndoStepOnItem")
  record StepView(UndoStep step, ThingRef item) {
    static StepView of(UndoPlan.Line line) {
      return new StepView(line.step(), new ThingRef(line.kind(), line.id(), line.title()));
    }
  }

  /**
   * An entry, or a token or session of the member.
   *
   * @param title what lists call it
   */
  record ThingRef(String kind, UUID id, @Nullable String title) {}

  /**
   * An undo that was confirmed.
   *
   * @param by who began it
   */
  @Schema(name = "Undo")
  record RunView(
      UUID id,
      @JsonUnwrapped Subject subject,
      String reason,
      MemberJson by,
      Instant createdAt,
      @JsonUnwrapped Progress progress) {

    /**
     * How far it is.
     *
     * @param state running, done, restoring or restored
     * @param skipped steps that could not be taken
     */
    record Progress(
        @Schema(enumeration = {"running", "done", "restoring", "restored"}) String state,
        long total,
        long done,
        long restored,
        long skipped) {}

    static RunView of(UndoRun r) {
      return new RunView(
          r.id(),
          new Subject(
              r.member() == null ? null : MemberJson.of(r.member(), r.subject().handle()),
              r.rule(),
              r.since()),
          r.reason(),
          MemberJson.of(r.startedBy(), r.by()),
          r.startedAt(),
          new Progress(r.state(), r.total(), r.done(), r.restored(), r.skipped()));
    }
  }
}

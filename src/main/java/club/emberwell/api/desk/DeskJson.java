package club.emberwell.api.desk;

import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.desk.flag.Flagged;
import club.emberwell.desk.home.DeskHome;
import club.emberwell.desk.rule.Rule;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.desk.undo.UndoPlan;
import club.emberwell.desk.undo.UndoRun;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdict;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** The shapes of what the desk request. */
final class DeskJson {
  private DeskJson() {}

  record ItemView(
      String kind,
      UUID id,
      String title,
      String state,
      String author,
      UUID authorId,
      Instant createdAt,
      String path) {
    static ItemView of(Entry item) {
      return new ItemView(
          item.kind().code(),
          item.id(),
          item.title(),
          item.state().code(),
          item.author().handle(),
          item.author().id(),
          item.times().created(),
          item.path());
    }
  }

  record RefView(String kind, UUID id) {
    static RefView of(EntryRef ref) {
      return new RefView(ref.kind().code(), ref.id());
    }
  }

  record DecisionView(RefView item, String by, String action, String reason, Instant at) {
    static DecisionView of(Verdict d) {
      return new DecisionView(
          RefView.of(d.entry().ref()), d.by(), d.action().code(), d.reason(), d.at());
    }
  }

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record FlagView(
      UUID id,
      RefView item,
      String title,
      String by,
      FlagReason reason,
      String note,
      Instant createdAt,
      @JsonUnwrapped Settlement settlement) {

    /** What came of it. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Settlement(String state, Instant decidedAt, String outcome) {}

    static FlagView of(Flag f) {
      return new FlagView(
          f.id(),
          RefView.of(f.ref()),
          f.item(),
          f.by(),
          f.reason(),
          f.note(),
          f.createdAt(),
          new Settlement(f.state(), f.decidedAt(), f.outcome()));
    }
  }

  record FlaggedView(
      ItemView item, int flags, List<FlagReason> reasons, Instant oldest, boolean forOwners) {
    static FlaggedView of(Flagged f) {
      return new FlaggedView(
          ItemView.of(f.item()), f.flags(), f.reasons(), f.oldest(), f.forOwners());
    }
  }

  record RuleView(
      RuleCode code,
      String label,
      String says,
      String mode,
      double threshold,
      int minutes,
      int version,
      Instant changedAt) {
    static RuleView of(Rule r) {
      return new RuleView(
          r.code(),
          r.code().label(),
          r.code().says(),
          r.mode(),
          r.threshold(),
          r.minutes(),
          r.version(),
          r.changedAt());
    }
  }

  record NoteView(
      long id, RuleCode rule, ItemView item, String detail, String mode, String state, Instant at) {
    static NoteView of(RuleNote n) {
      return new NoteView(
          n.id(), n.rule(), ItemView.of(n.item()), n.detail(), n.mode(), n.state(), n.at());
    }
  }

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record PlanView(
      UUID member,
      RuleCode rule,
      Instant since,
      long total,
      List<UndoPlan.Count> counts,
      List<UndoPlan.Line> first,
      int vocabularyChanges) {
    static PlanView of(UndoPlan p) {
      return new PlanView(
          p.member(), p.rule(), p.since(), p.total(), p.counts(), p.first(), p.vocabulary());
    }
  }

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record RunView(
      UUID id,
      UUID member,
      RuleCode rule,
      Instant since,
      String reason,
      String startedBy,
      Instant startedAt,
      @JsonUnwrapped Progress progress) {

    /** How far it is. */
    record Progress(String state, long total, long done, long restored, long skipped) {}

    static RunView of(UndoRun r) {
      return new RunView(
          r.id(),
          r.member(),
          r.rule(),
          r.since(),
          r.reason(),
          r.by(),
          r.startedAt(),
          new Progress(r.state(), r.total(), r.done(), r.restored(), r.skipped()));
    }
  }

  /** Counts stop at 100, which stands for "more than 99". */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record HomeView(
      DeskHome.Counts counts,
      Instant oldest,
      boolean late,
      List<ItemView> waiting,
      List<FlaggedView> flagged,
      List<NoteView> notes) {
    static HomeView of(DeskHome home) {
      return new HomeView(
          home.counts(),
          home.oldest(),
          home.late(),
          home.waiting().stream().map(ItemView::of).toList(),
          home.flagged().stream().map(FlaggedView::of).toList(),
          home.notes().stream().map(NoteView::of).toList());
    }
  }
}

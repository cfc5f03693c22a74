package club.emberwell.api.desk;

import club.emberwell.desk.Decision;
import club.emberwell.desk.DeskHome;
import club.emberwell.desk.Flag;
import club.emberwell.desk.FlagReason;
import club.emberwell.desk.Flagged;
import club.emberwell.desk.Item;
import club.emberwell.desk.ItemRef;
import club.emberwell.desk.Rule;
import club.emberwell.desk.RuleNote;
import club.emberwell.desk.UndoPlan;
import club.emberwell.desk.UndoRun;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
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
    static ItemView of(Item item) {
      return new ItemView(
          item.ref().kind().code(),
          item.ref().id(),
          item.title(),
          item.state().toLowerCase(Locale.ROOT),
          item.authorHandle(),
          item.author(),
          item.createdAt(),
          item.path());
    }
  }

  record RefView(String kind, UUID id) {
    static RefView of(ItemRef ref) {
      return new RefView(ref.kind().code(), ref.id());
    }
  }

  record DecisionView(RefView item, String by, String action, String reason, Instant at) {
    static DecisionView of(Decision d) {
      return new DecisionView(RefView.of(d.ref()), d.by(), d.action().code(), d.reason(), d.at());
    }
  }

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record FlagView(
      UUID id,
      RefView item,
      String title,
      String by,
      String reason,
      String note,
      String state,
      Instant createdAt,
      Instant decidedAt,
      String outcome) {
    static FlagView of(Flag f) {
      return new FlagView(
          f.id(),
          RefView.of(f.ref()),
          f.item(),
          f.by(),
          f.reason().code(),
          f.note(),
          f.state(),
          f.createdAt(),
          f.decidedAt(),
          f.outcome());
    }
  }

  record FlaggedView(
      ItemView item, int flags, List<String> reasons, Instant oldest, boolean forOwners) {
    static FlaggedView of(Flagged f) {
      return new FlaggedView(
          ItemView.of(f.item()),
          f.flags(),
          f.reasons().stream().map(FlagReason::code).toList(),
          f.oldest(),
          f.forOwners());
    }
  }

  record RuleView(
      String code,
      String label,
      String says,
      String mode,
      double threshold,
      int minutes,
      int version,
      Instant changedAt) {
    static RuleView of(Rule r) {
      return new RuleView(
          r.code().code(),
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
      long id, String rule, ItemView item, String detail, String mode, String state, Instant at) {
    static NoteView of(RuleNote n) {
      return new NoteView(
          n.id(), n.rule().code(), ItemView.of(n.item()), n.detail(), n.mode(), n.state(), n.at());
    }
  }

  record CountView(String step, String kind, long count) {}

  record LineView(String step, String kind, UUID id, String title) {}

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record PlanView(
      UUID member,
      String rule,
      Instant since,
      long total,
      List<CountView> counts,
      List<LineView> first,
      int vocabularyChanges) {
    static PlanView of(UndoPlan p) {
      return new PlanView(
          p.member(),
          p.rule() == null ? null : p.rule().code(),
          p.since(),
          p.total(),
          p.counts().stream()
              .map(c -> new CountView(c.step().code(), c.kind(), c.count()))
              .toList(),
          p.first().stream()
              .map(l -> new LineView(l.step().code(), l.kind(), l.id(), l.title()))
              .toList(),
          p.vocabulary());
    }
  }

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record RunView(
      UUID id,
      UUID member,
      String rule,
      Instant since,
      String reason,
      String state,
      String startedBy,
      Instant startedAt,
      long total,
      long done,
      long restored,
      long skipped) {
    static RunView of(UndoRun r) {
      return new RunView(
          r.id(),
          r.member(),
          r.rule() == null ? null : r.rule().code(),
          r.since(),
          r.reason(),
          r.state(),
          r.by(),
          r.startedAt(),
          r.total(),
          r.done(),
          r.restored(),
          r.skipped());
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

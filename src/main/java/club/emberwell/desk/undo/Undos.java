package club.emberwell.desk.undo;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Undoes what a member or a rule did since a time: shown first, done once it is confirmed, in small
 * transactions, and undone itself if it was a mistake.
 */
@ApplicationScoped
public class Undos {
  private static final ListOrder ALL = ListOrder.newestFirst("undos", DeskLimits.PAGE);

  private final UndoRepository undos;
  private final UndoCandidateRepository candidates;
  private final UndoWork work;
  private final Members members;
  private final Audit audit;

  Undos(
      UndoRepository undos,
      UndoCandidateRepository candidates,
      UndoWork work,
      Members members,
      Audit audit) {
    this.undos = undos;
    this.candidates = candidates;
    this.work = work;
    this.members = members;
    this.audit = audit;
  }

  /**
   * Whose deeds to undo; exactly one of the first two.
   *
   * @param member id or null
   * @param rule code or null
   */
  public record Wanted(UUID member, String rule, Instant since) {}

  /**
   * What would be done.
   *
   * @throws EntryRefused for fields at fault
   * @throws EntryForbidden for oneself, and for moderators and owners unless an owner asks
   */
  @Transactional
  public UndoPlan preview(Actor actor, Wanted wanted) {
    RuleCode rule = check(actor, wanted);
    return new UndoPlan(
        wanted.member(),
        rule,
        wanted.since(),
        candidates.counts(wanted.member(), rule, wanted.since()),
        candidates.first(wanted.member(), rule, wanted.since(), DeskLimits.UNDO_SHOWN),
        rule == null ? candidates.vocabulary(wanted.member(), wanted.since()) : 0);
  }

  /**
   * Does it: a good deal at once, the rest in the background.
   *
   * @param run an id made with the preview; the same one twice is one undo
   * @param reason for everybody concerned
   */
  public UndoRun start(Actor actor, UUID run, Wanted wanted, String reason) {
    QuarkusTransaction.requiringNew().run(() -> begin(actor, run, wanted, reason));
    work.some(run, DeskLimits.UNDO_AT_ONCE);
    return one(actor, run);
  }

  private void begin(Actor actor, UUID run, Wanted wanted, String reason) {
    if (run == null) {
      throw new EntryRefused(RemarkId.REQUIRED, "/id", "Please fill in this field.");
    }
    RuleCode rule = check(actor, wanted);
    String why = DeskAccess.reason(reason);
    UUID by = DeskAccess.signedIn(actor);
    UndoRun.Subject what = new UndoRun.Subject(wanted.member(), null, rule, wanted.since());
    if (undos.begin(run, what, why, by, Instant.now())) {
      candidates.keep(run, wanted.member(), rule, wanted.since());
      String about = rule == null ? wanted.member().toString() : rule.code();
      Map<String, Object> detail =
          Map.of("since", wanted.since().toString(), "run", run.toString());
      audit.record(actor, "undo", rule == null ? "member" : "rule", about, why, detail);
    } else if (!undos.run(run).orElseThrow().startedBy().equals(by)) {
      throw new EntryRefused(RemarkId.ID_TAKEN, "/id", "This id belongs to another undo.");
    }
  }

  private RuleCode check(Actor actor, Wanted wanted) {
    DeskAccess.moderates(actor);
    if ((wanted.member() == null) == (wanted.rule() == null)) {
      throw new EntryRefused(
          RemarkId.CHOICE_UNKNOWN, "/member", "Choose a member or a rule, not both.");
    }
    if (wanted.since() == null || wanted.since().isAfter(Instant.now())) {
      throw new EntryRefused(RemarkId.TIME_UNREADABLE, "/since", "Choose a time in the past.");
    }
    if (wanted.member() == null) {
      return Coded.of(RuleCode.class, wanted.rule())
          .filter(rule -> rule != RuleCode.FIRST_LOOK)
          .orElseThrow(() -> new EntryRefused(RemarkId.CHOICE_UNKNOWN, "/rule", "No such rule."));
    }
    MemberView member =
        members
            .byId(wanted.member())
            .orElseThrow(
                () -> new EntryRefused(RemarkId.MEMBER_UNKNOWN, "/member", "No such member."));
    DeskAccess.above(actor, member);
    return null;
  }

  /** Takes an undo back: what it did is put as it was before. A second time does nothing. */
  public UndoRun restore(Actor actor, UUID run) {
    QuarkusTransaction.requiringNew().run(() -> beginRestoring(actor, run));
    work.some(run, DeskLimits.UNDO_AT_ONCE);
    return one(actor, run);
  }

  private void beginRestoring(Actor actor, UUID id) {
    DeskAccess.moderates(actor);
    UndoRun run = find(id);
    if (run.member() != null && !run.together()) {
      DeskAccess.above(actor, members.byId(run.member()).orElseThrow());
    }
    if (run.state().equals("running")) {
      throw new EntryForbidden(EntryForbidden.Why.STATE, "This undo is still running.");
    }
    if (undos.enter(id, "done", "restoring", DeskAccess.signedIn(actor))) {
      audit.record(actor, "take-back-undo", "undo", id.toString(), "", Map.of());
    }
  }

  @Transactional
  public UndoRun one(Actor actor, UUID id) {
    DeskAccess.moderates(actor);
    return find(id);
  }

  private UndoRun find(UUID id) {
    return undos.run(id).orElseThrow(() -> new EntryUnknown("undo"));
  }

  /** Newest first. */
  @Transactional
  public Slice<UndoRun> all(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(part, ALL, undos::newest, run -> List.of(run.start().at(), run.id()));
  }
}

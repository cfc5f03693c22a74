package club.emberwell.report;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportRevisionEntity.Cause;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;

/** What moderators decide about reports: always with a reason, never about their own. */
@ApplicationScoped
public class ReportModeration {
  private final ReportRepository reports;
  private final ReportReader reader;
  private final ReportWriter writer;
  private final Audit audit;

  ReportModeration(
      ReportRepository reports, ReportReader reader, ReportWriter writer, Audit audit) {
    this.reports = reports;
    this.reader = reader;
    this.writer = writer;
    this.audit = audit;
  }

  /** What can be decided. */
  public enum Decision {
    /** Out of sight until it is settled. */
    HOLD(ReportState.HELD, RevisionAction.HELD),
    REMOVE(ReportState.REMOVED, RevisionAction.REMOVED),
    /** Back, or for the first time, into sight. */
    RESTORE(ReportState.LIVE, RevisionAction.RESTORED);

    private final ReportState state;
    private final RevisionAction action;

    Decision(ReportState state, RevisionAction action) {
      this.state = state;
      this.action = action;
    }
  }

  /**
   * Moves a report to another state. Deciding what is so already does nothing.
   *
   * @param reason for the author; never blank
   * @throws EntryForbidden for whoever is no moderator, for one's own report, and for one that its
   *     author withdrew
   */
  @Transactional
  public StoredReport decide(Actor actor, UUID id, Decision decision, String reason) {
    if (!actor.moderates()) {
      throw new EntryForbidden("Only moderators decide this.");
    }
    ReportEntity report = reports.locked(id).orElseThrow(() -> new EntryUnknown("report"));
    if (actor.is(report.memberId())) {
      throw new EntryForbidden("Nobody decides about their own report.");
    }
    if (report.state() == ReportState.WITHDRAWN) {
      throw new EntryForbidden("Its author has withdrawn this report.");
    }
    String why = Reasons.needed(reason);
    if (report.state() != decision.state) {
      Cause cause = new Cause(actor.memberId(), Instant.now(), why);
      writer.enter(report, decision.state, decision.action, cause);
      audit.record(actor, decision.action.code(), "report", id.toString(), why, Map.of());
    }
    return reader.whole(id, false);
  }
}

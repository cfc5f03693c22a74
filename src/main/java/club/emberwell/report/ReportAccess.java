package club.emberwell.report;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import java.time.Instant;
import java.util.UUID;

/** Who may see and change a report. */
final class ReportAccess {
  private ReportAccess() {}

  /**
   * Lets through whoever may see a report.
   *
   * @throws EntryUnknown where it must not be known
   * @throws ReportGone where it was public once
   */
  static void see(Actor actor, UUID author, ReportState state, Instant since) {
    if (state == ReportState.LIVE || actor.is(author) || actor.moderates()) {
      return;
    }
    if (state == ReportState.WITHDRAWN || state == ReportState.REMOVED) {
      throw new ReportGone(state, since);
    }
    throw new EntryUnknown("report");
  }

  static UUID signedIn(Actor actor) {
    if (!actor.signedIn()) {
      throw new EntryForbidden("Sign in first.");
    }
    return actor.memberId();
  }

  static void edit(Actor actor, ReportEntity report) {
    signedIn(actor);
    see(actor, report.memberId(), report.state(), report.updatedAt());
    if (!actor.is(report.memberId()) && !actor.moderates()) {
      throw new EntryForbidden("Only its author and moderators may change a report.");
    }
    if (report.state() == ReportState.WITHDRAWN) {
      throw new EntryForbidden("A withdrawn report is not changed any more.");
    }
  }

  static void own(Actor actor, ReportEntity report) {
    signedIn(actor);
    see(actor, report.memberId(), report.state(), report.updatedAt());
    if (!actor.is(report.memberId())) {
      throw new EntryForbidden("Only its author may do this.");
    }
  }
}

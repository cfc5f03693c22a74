package club.emberwell.desk;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.Origin;
import club.emberwell.report.Posting;
import club.emberwell.report.ReportModeration;
import club.emberwell.report.ReportService;
import club.emberwell.report.Revision;
import club.emberwell.report.StoredReport;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Reports. */
@ApplicationScoped
class ReportShelf implements Shelf {
  private final ReportModeration moderation;
  private final ReportService reports;

  ReportShelf(ReportModeration moderation, ReportService reports) {
    this.moderation = moderation;
    this.reports = reports;
  }

  @Override
  public boolean holds(ItemKind kind) {
    return kind == ItemKind.REPORT;
  }

  @Override
  public void move(Actor actor, UUID id, Action action, String why) {
    moderation.decide(
        actor,
        id,
        switch (action) {
          case APPROVE, RESTORE -> ReportModeration.Decision.RESTORE;
          case HOLD -> ReportModeration.Decision.HOLD;
          case REMOVE -> ReportModeration.Decision.REMOVE;
        },
        why);
  }

  @Override
  public int version(Actor actor, UUID id) {
    return reports.get(actor, id).snapshot().version();
  }

  @Override
  public void rewrite(Actor actor, UUID id, int version, String why) {
    StoredReport now = reports.get(actor, id);
    Revision then =
        reports.history(actor, id).stream()
            .filter(r -> r.version() == version)
            .findFirst()
            .orElseThrow(() -> new EntryUnknown("version"));
    Posting posting = new Posting(null, then.written(), now.style(), Origin.HERE, null, false);
    reports.revise(actor, id, now.snapshot().version(), posting, why);
  }
}

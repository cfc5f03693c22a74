package club.emberwell.web.desk;

import club.emberwell.entry.Entry;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportService;
import club.emberwell.talk.TalkService;
import club.emberwell.web.report.ReportViewer;
import jakarta.enterprise.context.ApplicationScoped;

/** Reads what items say, so that it stands beside the decision about it. */
@ApplicationScoped
class ItemContents {
  private final ReportService reports;
  private final ReportViewer viewer;
  private final TalkService talk;

  ItemContents(ReportService reports, ReportViewer viewer, TalkService talk) {
    this.reports = reports;
    this.viewer = viewer;
    this.talk = talk;
  }

  ItemContent of(Actor actor, Entry item) {
    return switch (item.kind()) {
      case REPORT ->
          new ItemContent(
              viewer.page(reports.get(actor, item.id()), ReportViewer.Repeats.NONE, actor),
              null,
              null);
      case QUESTION, ANSWER, NOTICE, COMMENT ->
          new ItemContent(null, talk.get(actor, item.id()).html(), null);
      case PHOTO -> new ItemContent(null, null, "/photos/" + item.id() + "/large.jpg");
      case GRID, SAMPLE, LOT, RECIPE, EYEWEAR, ROOM, FIXTURE ->
          throw new EntryUnknown(item.kind().code());
    };
  }
}

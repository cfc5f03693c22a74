package club.emberwell.sample;

import club.emberwell.bench.FieldReader;
import club.emberwell.entry.EntryState;
import club.emberwell.grid.GridService;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.ReportSource;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/** Reads a sample as written into what is stored, or says what is at fault. */
@ApplicationScoped
class SampleReader {
  private final ReportSource reports;
  private final GridService grids;

  SampleReader(ReportSource reports, GridService grids) {
    this.reports = reports;
    this.grids = grids;
  }

  /**
   * A sample that can be stored.
   *
   * @param title what lists call it: its own words, else those of what it shows
   */
  record Read(WrittenSample written, String title) {}

  /**
   * A new sample.
   *
   * @throws EntryRefused with a remark for every field at fault
   */
  Read read(Actor actor, WrittenSample w) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String shown = both(w, in) ? null : shown(actor, w, in);
    return checked(w, shown, in);
  }

  /** A sample anew; what it showed before may have gone meanwhile, and stays. */
  Read revised(Actor actor, WrittenSample before, String title, WrittenSample w) {
    boolean same =
        Objects.equals(before.report(), w.report()) && Objects.equals(before.grid(), w.grid());
    if (!same || before.report() == null && before.grid() == null) {
      return read(actor, w);
    }
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String called =
        before.what() == null ? title : shown(actor, w, new FieldReader(NumberStyle.ANY));
    return checked(w, called == null ? title : called, in);
  }

  /** One of a file of its owner's: what it shows is there, or is named no more. */
  Read brought(WrittenSample w, String title) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    both(w, in);
    boolean alone = w.report() == null && w.grid() == null && w.what() == null;
    WrittenSample said =
        alone ? new WrittenSample(null, null, title, w.box(), w.place(), w.notes()) : w;
    return checked(said, title, in);
  }

  private static boolean both(WrittenSample w, FieldReader in) {
    boolean both = w.report() != null && w.grid() != null;
    if (both) {
      String detail = "A sample shows a report or a grid, not both.";
      in.add(Remark.error(RemarkId.SAMPLE_OF_BOTH, "/grid", detail));
    }
    return both;
  }

  private String shown(Actor actor, WrittenSample w, FieldReader in) {
    if (w.report() != null) {
      Optional<String> title = report(actor, w.report());
      if (title.isEmpty()) {
        in.add(Remark.error(RemarkId.REPORT_UNKNOWN, "/report", "There is no such report."));
      }
      return title.orElse(null);
    }
    if (w.grid() != null) {
      try {
        return grids.get(actor, w.grid()).name();
      } catch (EntryUnknown e) {
        in.add(Remark.error(RemarkId.GRID_UNKNOWN, "/grid", "You have no such grid."));
      }
    }
    return null;
  }

  private Optional<String> report(Actor actor, UUID id) {
    return reports.byIds(List.of(id)).stream()
        .filter(r -> r.state() == EntryState.LIVE || actor.is(r.author().id()) && !r.state().gone())
        .map(report -> report.work().called())
        .findFirst();
  }

  private static Read checked(WrittenSample w, String shown, FieldReader in) {
    if (w.report() == null && w.grid() == null) {
      in.required("/what", w.what());
    }
    WrittenSample written =
        new WrittenSample(
            w.report(),
            w.grid(),
            in.text("/what", w.what(), SampleLimits.WHAT, false),
            in.text("/box", w.box(), SampleLimits.BOX, false),
            in.text("/place", w.place(), SampleLimits.PLACE, false),
            in.text("/notes", w.notes(), SampleLimits.NOTES, true));
    Remarks.refuse(in.remarks());
    return new Read(written, written.what() == null ? shown : written.what());
  }
}

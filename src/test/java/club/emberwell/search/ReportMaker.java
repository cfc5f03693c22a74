package club.emberwell.search;

import club.emberwell.entry.EntryState;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSnapshot.Author;
import club.emberwell.report.ReportSnapshot.Burner;
import club.emberwell.report.ReportSnapshot.Standing;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import java.util.List;

/** One report for a test, with only what the test is about. */
final class ReportMaker {
  /** Keeps them apart from reports that a test invents itself: a number belongs to one report. */
  private static final long OWN_NUMBERS = 1_000_000;

  private static final InventedReports INVENTED = new InventedReports(7);
  private String material;
  private String materialWritten = "";
  private String coating;
  private String colour;
  private Double thickness;
  private String notes;
  private String machineName = "Bench";
  private Laser laser;
  private List<TrialSnapshot> trials;

  static ReportMaker report() {
    return new ReportMaker();
  }

  ReportMaker of(String slug) {
    material = slug;
    materialWritten = slug.replace('-', ' ');
    return this;
  }

  /** Of a thickness in mm, or of none that was read. */
  ReportMaker thick(Double mm, String written) {
    thickness = mm;
    materialWritten = written;
    return this;
  }

  ReportMaker unfiled(String written) {
    material = null;
    materialWritten = written;
    return this;
  }

  ReportMaker coated(String slug, String colourSlug) {
    coating = slug;
    colour = colourSlug;
    return this;
  }

  ReportMaker saying(String text) {
    notes = text;
    return this;
  }

  ReportMaker on(String machine) {
    machineName = machine;
    return this;
  }

  ReportMaker with(Laser other) {
    laser = other;
    return this;
  }

  ReportMaker trying(List<TrialSnapshot> several) {
    trials = several;
    return this;
  }

  synchronized ReportSnapshot make() {
    ReportSnapshot base = INVENTED.next();
    return new ReportSnapshot(
        new Standing(
            base.id(),
            OWN_NUMBERS + base.number(),
            1,
            EntryState.LIVE,
            base.standing().licence(),
            base.createdAt(),
            base.createdAt()),
        new Author(base.author().id(), base.author().number(), "ada"),
        new Burner(
            base.machine().id(),
            base.machine().number(),
            machineName,
            null,
            laser == null ? base.laser() : laser),
        Work.of(Process.SURFACE_ENGRAVING)
            .with(WorkProperty.MATERIAL, new Filed(material, materialWritten))
            .with(WorkProperty.COATING, new Filed(coating, coating))
            .with(WorkProperty.COLOUR, new Filed(colour, colour))
            .with(WorkProperty.THICKNESS, thickness)
            .with(WorkProperty.NOTES, notes),
        trials == null ? base.trials().subList(0, 1) : trials,
        null,
        ReportSnapshot.Beside.NOTHING);
  }

  static ReportSnapshot inState(ReportSnapshot r, EntryState state, int version) {
    return new ReportSnapshot(
        new Standing(
            r.id(),
            r.number(),
            version,
            state,
            r.standing().licence(),
            r.createdAt(),
            r.updatedAt()),
        r.author(),
        r.machine(),
        r.work(),
        r.trials(),
        r.repeatOf(),
        r.beside());
  }
}

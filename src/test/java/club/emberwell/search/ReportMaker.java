package club.emberwell.search;

import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportState;
import club.emberwell.report.TrialSnapshot;
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
        base.id(),
        OWN_NUMBERS + base.number(),
        1,
        ReportState.LIVE,
        base.memberId(),
        base.memberNumber(),
        "ada",
        base.machineId(),
        base.machineNumber(),
        machineName,
        laser == null ? base.laser() : laser,
        material,
        materialWritten,
        coating,
        coating,
        colour,
        colour,
        Process.SURFACE_ENGRAVING,
        null,
        null,
        null,
        notes,
        null,
        0,
        base.createdAt(),
        base.createdAt(),
        trials == null ? base.trials().subList(0, 1) : trials);
  }

  static ReportSnapshot inState(ReportSnapshot r, ReportState state, int version) {
    return new ReportSnapshot(
        r.id(),
        r.number(),
        version,
        state,
        r.memberId(),
        r.memberNumber(),
        r.memberHandle(),
        r.machineId(),
        r.machineNumber(),
        r.machineName(),
        r.laser(),
        r.material(),
        r.materialWritten(),
        r.coating(),
        r.coatingWritten(),
        r.colour(),
        r.colourWritten(),
        r.process(),
        r.thicknessMm(),
        r.lot(),
        r.controllerVersion(),
        r.notes(),
        r.repeatOf(),
        r.photos(),
        r.createdAt(),
        r.updatedAt(),
        r.trials());
  }
}

package club.emberwell.grid.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.catalog.Catalog;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.ReportInterpreter;
import club.emberwell.report.reading.SettingsReader;
import club.emberwell.report.reading.WrittenReport;
import java.util.List;
import java.util.stream.Stream;

/** Reads a grid from what was written; pure. Bad input never throws, it comes back as errors. */
public final class GridReader {
  private static final String AT_SETTINGS = "/settings";

  private final FieldReader in;
  private final WrittenGrid written;

  private GridReader(FieldReader in, WrittenGrid written) {
    this.in = in;
    this.written = written;
  }

  /**
   * @param machine laser of the machine the grid names, null where it names none or an unknown one
   */
  public static GridReading read(
      WrittenGrid written, Laser machine, Catalog catalog, NumberStyle style) {
    WrittenReport said =
        new WrittenReport(
            written.machine(), written.laser(), written.work(), List.of(), null, null);
    Interpretation work = ReportInterpreter.readPlanned(said, machine, catalog, style);
    return new GridReader(new FieldReader(style), written).read(work);
  }

  private GridReading read(Interpretation work) {
    String name = in.text("/name", written.name(), GridLimits.NAME, false);
    Settings base =
        written.settings() == null
            ? Settings.NONE
            : SettingsReader.readSome(in, AT_SETTINGS, written.settings());
    Wish wish = new AxesReader(in, work.laser(), work.work().process()).read(written.axes());
    base = without(wish.down(), without(wish.across(), base));
    Piece piece = piece(written.blank() == null ? WrittenBlank.USUAL : written.blank());
    Timing timing = timing(written.timing() == null ? WrittenTiming.USUAL : written.timing());
    List<Remark> remarks = Stream.concat(work.remarks().stream(), in.remarks().stream()).toList();
    return new GridReading(
        name,
        work.laser(),
        work.work(),
        base,
        wish,
        piece,
        timing,
        new GridReading.Noticed(work.ban(), remarks));
  }

  /** What lies on an axis does not stay. */
  private static Settings without(Axis axis, Settings base) {
    return axis == null ? base : base.with(axis.setting(), null);
  }

  private Piece piece(WrittenBlank blank) {
    Double cell = length("/blank/cell", blank.cell(), GridLimits.CELL_MM);
    Double gap = length("/blank/gap", blank.gap(), GridLimits.GAP_MM);
    Double width = length("/blank/width", blank.width(), GridLimits.BLANK_MM);
    Double height = length("/blank/height", blank.height(), GridLimits.BLANK_MM);
    Double diameter = length("/blank/diameter", blank.diameter(), GridLimits.BLANK_MM);
    boolean rotary = Boolean.TRUE.equals(blank.rotary());
    if (rotary && FieldReader.isAbsent(blank.diameter())) {
      String detail = "A rotary needs the diameter of the piece.";
      in.add(Remark.error(RemarkId.REQUIRED, "/blank/diameter", detail));
    }
    return new Piece(
        cell == null ? GridLimits.USUAL_CELL_MM : cell,
        gap == null ? GridLimits.USUAL_GAP_MM : gap,
        width,
        height,
        diameter,
        rotary);
  }

  private Timing timing(WrittenTiming timing) {
    return new Timing(
        in.quantity(
            "/timing/acceleration",
            QuantityKind.ACCELERATION,
            timing.acceleration(),
            GridLimits.ACCELERATION_MM_S2),
        length("/timing/overscan", timing.overscan(), GridLimits.OVERSCAN_MM));
  }

  private Double length(String at, WrittenQuantity given, Bounds bounds) {
    return in.quantity(at, QuantityKind.LENGTH, given, bounds);
  }
}

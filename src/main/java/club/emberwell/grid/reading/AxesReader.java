package club.emberwell.grid.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Shape;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.SettingsReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads the axes of a grid. */
final class AxesReader {
  private static final String AT = "/axes";
  private static final String ACROSS = AT + "/across";
  private static final String DOWN = AT + "/down";

  /** Of a step, as far as a value between two typed ones is rounded (own rule, no source). */
  private static final double SHARE = 0.2;

  private final FieldReader in;
  private final Laser laser;
  private final Process process;

  /**
   * @param laser null where it is at fault
   * @param process null where it is at fault
   */
  AxesReader(FieldReader in, Laser laser, Process process) {
    this.in = in;
    this.laser = laser;
    this.process = process;
  }

  /** The settings that can lie on an axis. */
  static List<Setting> numbers() {
    return Stream.of(Setting.values()).filter(setting -> setting.value().isNumber()).toList();
  }

  Wish read(WrittenAxes given) {
    WrittenAxes written = given == null ? WrittenAxes.USUAL : given;
    Axis across = axis(ACROSS, written.across());
    Axis down = axis(DOWN, written.down());
    if (across != null && down != null) {
      if (across.setting() == down.setting()) {
        String detail = "Choose two different settings: one across, one down.";
        in.add(Remark.error(RemarkId.AXES_ALIKE, DOWN + "/setting", detail));
      }
      size(across.size(), down.size());
    }
    return new Wish(across, down, resolution(written.resolution()), most(written, across, down));
  }

  private void size(int columns, int rows) {
    if (columns * rows == 1) {
      String detail = "One test is no grid. Give at least one of the two settings more values.";
      in.add(Remark.error(RemarkId.GRID_TOO_SMALL, AT, detail));
    }
  }

  private double resolution(Double given) {
    if (given == null) {
      return GridLimits.USUAL_RESOLUTION;
    }
    if (!GridLimits.RESOLUTION.hold(given)) {
      String detail =
          "A dose can be from %s to %s times its neighbour."
              .formatted(GridLimits.RESOLUTION.min(), GridLimits.RESOLUTION.max());
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, AT + "/resolution", detail));
    }
    return given;
  }

  private int most(WrittenAxes written, Axis across, Axis down) {
    if (written.most() == null) {
      return GridLimits.CELLS;
    }
    int most = written.most();
    String at = AT + "/most";
    if (most < GridLimits.FEWEST || most > GridLimits.CELLS) {
      String detail =
          "A grid has from %d to %d tests.".formatted(GridLimits.FEWEST, GridLimits.CELLS);
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, at, detail));
    } else if (across != null && down != null && across.size() * down.size() > most) {
      String detail =
          "These values make %d tests, more than the %d you asked for."
              .formatted(across.size() * down.size(), most);
      in.add(Remark.error(RemarkId.GRID_TOO_LARGE, at, detail));
    }
    return most;
  }

  private Axis axis(String at, WrittenAxis written) {
    if (written == null) {
      return null;
    }
    Optional<Setting> setting =
        Optional.ofNullable(in.required(at + "/setting", written.setting()))
            .flatMap(code -> found(at + "/setting", code));
    return setting.map(s -> new Axis(s, values(at, s, written))).orElse(null);
  }

  private Optional<Setting> found(String at, String code) {
    List<String> codes = numbers().stream().map(Setting::code).toList();
    Optional<Setting> setting = Setting.of(code).filter(s -> s.value().isNumber());
    if (setting.isEmpty()) {
      in.choice(at, code, codes);
    }
    setting.flatMap(this::notHere).ifPresent(why -> in.add(why.at(at)));
    return setting;
  }

  private Optional<Remark> notHere(Setting setting) {
    if (process != null && !setting.appliesTo(process)) {
      String detail = "%s is for filled areas only. Choose another setting.";
      return Optional.of(
          Remark.error(RemarkId.AXIS_NOT_HERE, "", detail.formatted(setting.label())));
    }
    if (laser != null && !setting.appliesTo(laser)) {
      String detail = "This laser is continuous: it has no %s to set.";
      return Optional.of(
          Remark.error(
              RemarkId.AXIS_NOT_HERE,
              "",
              detail.formatted(setting == Setting.PULSE_DURATION ? "pulses" : "frequency")));
    }
    return Optional.empty();
  }

  private List<Object> values(String at, Setting setting, WrittenAxis written) {
    boolean span = !FieldReader.isAbsent(written.from()) || !FieldReader.isAbsent(written.to());
    if (written.values() != null && !written.values().isEmpty()) {
      return typed(at + "/values", setting, written.values());
    }
    return span || written.steps() != null ? spanned(at, setting, written) : List.of();
  }

  private List<Object> typed(String at, Setting setting, List<WrittenQuantity> written) {
    if (written.size() > GridLimits.SIDE) {
      String detail = "At most %d values fit on one side of a grid.".formatted(GridLimits.SIDE);
      in.add(Remark.error(RemarkId.GRID_TOO_LARGE, at, detail));
      return List.of();
    }
    List<Object> values = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      Object value = value(at + "/" + i, setting, written.get(i));
      if (value != null) {
        values.add(value);
      }
    }
    return values.size() < written.size() ? List.of() : inOrder(at, setting, values);
  }

  private Object value(String at, Setting setting, WrittenQuantity written) {
    if (FieldReader.isAbsent(written)) {
      in.add(Remark.error(RemarkId.REQUIRED, at, "A value is missing here."));
      return null;
    }
    return setting.value().shape() == Shape.COUNT
        ? whole(at, setting, written)
        : SettingsReader.read(in, setting, at, written);
  }

  private Object whole(String at, Setting setting, WrittenQuantity written) {
    String text = written.text() == null ? "" : written.text().strip();
    if (!text.matches("\\d{1,6}")) {
      String detail = "Give a whole number without a unit.";
      in.add(Remark.error(RemarkId.NOT_A_WHOLE_NUMBER, at, detail));
      return null;
    }
    return SettingsReader.read(in, setting, at, Integer.valueOf(text));
  }

  private List<Object> inOrder(String at, Setting setting, List<Object> values) {
    Axis axis = new Axis(setting, values);
    boolean fault = false;
    for (int i = 1; i < values.size() && !fault; i++) {
      double step = axis.number(i) - axis.number(i - 1);
      double first = axis.number(1) - axis.number(0);
      int here = i;
      boolean twice = values.subList(0, i).stream().anyMatch(values.get(here)::equals);
      fault = twice || step * first <= 0 || !sameKind(values.get(0), values.get(i));
      if (twice) {
        in.add(Remark.error(RemarkId.VALUE_TWICE, at + "/" + i, "This value stands here twice."));
      } else if (fault) {
        String detail = "Give the values in one unit and in order, the lowest or highest first.";
        in.add(Remark.error(RemarkId.AXIS_UNORDERED, at + "/" + i, detail));
      }
    }
    return fault ? List.of() : values;
  }

  private static boolean sameKind(Object one, Object other) {
    return !(one instanceof Amount a) || !(other instanceof Amount b) || a.kind() == b.kind();
  }

  private List<Object> spanned(String at, Setting setting, WrittenAxis written) {
    in.required(at + "/steps", written.steps());
    Object from = value(at + "/from", setting, written.from());
    Object to = value(at + "/to", setting, written.to());
    if (written.steps() == null || from == null || to == null) {
      return List.of();
    }
    int steps = written.steps();
    if (steps < 1 || steps > GridLimits.SIDE) {
      String detail = "One side of a grid has from 1 to %d values.".formatted(GridLimits.SIDE);
      in.add(Remark.error(RemarkId.GRID_TOO_LARGE, at + "/steps", detail));
      return List.of();
    }
    if (steps == 1 && from.equals(to)) {
      return List.of(from);
    }
    List<Object> ends = inOrder(at, setting, List.of(from, to));
    return ends.isEmpty() ? ends : inOrder(at, setting, between(setting, ends, steps));
  }

  /** In equal ratio where both ends are positive, else in equal steps. */
  private static List<Object> between(Setting setting, List<Object> ends, int steps) {
    Axis span = new Axis(setting, ends);
    double low = span.number(0);
    double high = span.number(1);
    boolean ratio = low > 0 && high > 0 && setting.value().shape() != Shape.COUNT;
    List<Object> values = new ArrayList<>();
    for (int i = 0; i < steps; i++) {
      double share = steps == 1 ? 0 : i / (steps - 1.0);
      double exact = ratio ? low * Math.pow(high / low, share) : low + (high - low) * share;
      boolean end = i == 0 || i == steps - 1;
      double step = ratio ? exact * (Math.pow(high / low, 1.0 / (steps - 1)) - 1) : high - low;
      values.add(
          end && steps > 1
              ? ends.get(i == 0 ? 0 : 1)
              : like(ends.get(0), RoundNumber.near(exact, Math.abs(step) * SHARE)));
    }
    return values;
  }

  private static Object like(Object one, double number) {
    return one instanceof Amount amount
        ? new Amount(amount.kind(), number)
        : (Object) (int) Math.round(number);
  }
}

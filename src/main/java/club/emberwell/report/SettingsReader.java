package club.emberwell.report;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.Direction;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Reads settings from what was typed. Power and speed are needed, the rest may be missing. */
public final class SettingsReader {
  private static final Settings NONE =
      new Settings(null, null, null, null, null, null, null, null, null, null, null);

  // Readings that say "this is no power (or no percent) at all", so the other reading counts.
  private static final Set<RemarkId> OF_ANOTHER_KIND =
      Set.of(RemarkId.UNIT_OF_OTHER_DIMENSION, RemarkId.UNIT_UNKNOWN);

  private SettingsReader() {}

  /** Fields at fault are null, with an error at their pointer below {@code at}. */
  public static Settings read(FieldReader in, String at, WrittenSettings written) {
    if (in.required(at, written) == null) {
      return NONE;
    }
    Power power = power(in, at + "/power", written.power());
    return new Settings(
        power.percent(),
        power.watts(),
        in.quantity(
            at + "/speed",
            QuantityKind.SPEED,
            needed(in, at + "/speed", written.speed()),
            ReportLimits.SPEED_MM_S),
        in.quantity(
            at + "/lineSpacing",
            QuantityKind.LINE_SPACING,
            written.lineSpacing(),
            ReportLimits.LINE_SPACING_MM),
        passes(in, at + "/passes", written.passes()),
        in.quantity(
            at + "/repetitionRate",
            QuantityKind.REPETITION_RATE,
            written.repetitionRate(),
            ReportLimits.REPETITION_RATE_KHZ),
        in.quantity(
            at + "/pulseDuration",
            QuantityKind.PULSE_DURATION,
            written.pulseDuration(),
            ReportLimits.PULSE_DURATION_NS),
        in.quantity(
            at + "/focusOffset",
            QuantityKind.FOCUS_OFFSET,
            written.focusOffset(),
            ReportLimits.FOCUS_OFFSET_MM),
        written.airAssist(),
        in.choice(
            at + "/direction",
            written.direction(),
            Direction::of,
            Direction.values(),
            Direction::code),
        written.crossPass());
  }

  private record Power(Double percent, Double watts) {
    static final Power UNKNOWN = new Power(null, null);
  }

  private static WrittenQuantity needed(FieldReader in, String at, WrittenQuantity given) {
    if (FieldReader.isAbsent(given)) {
      in.required(at, null);
      return null;
    }
    return given;
  }

  private static Integer passes(FieldReader in, String at, Integer given) {
    if (given != null && (given < 1 || given > ReportLimits.PASSES)) {
      String detail = "Passes are counted from 1 to " + ReportLimits.PASSES + ".";
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, at, detail));
      return null;
    }
    return given;
  }

  // "45 %" and "12 W" are both a power: the basis is what the unit says, never assumed.
  private static Power power(FieldReader in, String at, WrittenQuantity written) {
    if (needed(in, at, written) == null) {
      return Power.UNKNOWN;
    }
    Reading<Quantity> percent = in.read(QuantityKind.POWER_PERCENT, written);
    Reading<Quantity> watts = in.read(QuantityKind.POWER, written);
    if (percent.value().isPresent() && watts.value().isEmpty()) {
      return new Power(in.take(at, percent, ReportLimits.POWER_PERCENT), null);
    }
    if (watts.value().isPresent() && percent.value().isEmpty()) {
      return new Power(null, in.take(at, watts, ReportLimits.POWER_W));
    }
    in.add(neither(percent, watts).at(at));
    return Power.UNKNOWN;
  }

  private static Remark neither(Reading<Quantity> percent, Reading<Quantity> watts) {
    Remark asPercent = error(percent);
    Remark asWatts = error(watts);
    if (asPercent == null || isOfAnotherKind(asPercent)) {
      return asWatts;
    }
    if (asWatts == null || isOfAnotherKind(asWatts)) {
      return asPercent;
    }
    List<String> readings = new ArrayList<>(asPercent.readings());
    asWatts.readings().stream().filter(r -> !readings.contains(r)).forEach(readings::add);
    String detail =
        asPercent.is(RemarkId.UNIT_MISSING)
            ? "Say percent of the rated power or watts."
            : asPercent.detail();
    return asPercent.with(detail, readings);
  }

  private static boolean isOfAnotherKind(Remark remark) {
    return OF_ANOTHER_KIND.stream().anyMatch(remark::is);
  }

  private static Remark error(Reading<Quantity> reading) {
    return reading.remarks().stream().filter(Remark::isError).findFirst().orElse(null);
  }
}

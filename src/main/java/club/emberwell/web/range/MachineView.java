package club.emberwell.web.range;

import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.answer.OnMyMachine.Line;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.dose.Comparison;
import club.emberwell.laser.dose.IsoDose;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.web.trial.TrialText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A range on the reader's machine: the verdict before any number.
 *
 * @param factor how the machine stands to others, where the doses are moved by it; else null
 */
public record MachineView(
    String laser,
    Verdict verdict,
    String factor,
    String basis,
    String spacing,
    Speeds speeds,
    List<Beside> beside) {
  private static final String IRRADIANCE = "W/cm2";

  /** What the compared quantities are, so that they print in the reader's units. */
  private static final Map<String, QuantityKind> KINDS =
      Map.of(
          "W", QuantityKind.POWER,
          "mm/s", QuantityKind.SPEED,
          "J/mm2", QuantityKind.AREAL_DOSE,
          "J/mm", QuantityKind.LINE_DOSE,
          "um", QuantityKind.BEAM_DIAMETER,
          "J/cm2", QuantityKind.FLUENCE,
          "ns", QuantityKind.PULSE_DURATION);

  /**
   * How far the range holds on this machine.
   *
   * @param boxClass style of the box it stands in
   */
  public record Verdict(String said, String boxClass, List<String> reasons) {
    /** False where the reasons begin with the verdict themselves. */
    public boolean isSpoken() {
      return reasons.isEmpty() || !reasons.get(0).startsWith(said);
    }
  }

  /**
   * Power against the speeds of the lines of equal dose.
   *
   * @param unit of the speeds
   * @param doses at the head of the columns
   */
  public record Speeds(String unit, List<String> doses, List<Row> rows) {}

  /** One power with a speed for each line; empty where the machine cannot run it. */
  public record Row(String power, List<String> speeds) {}

  /** A quantity of peers beside the reader's. */
  public record Beside(String name, String theirs, String mine, String times) {}

  public static MachineView of(
      OnMyMachine found, Range range, Optional<OnThisWork> factor, UnitPreferences reader) {
    MeasureText dose = new MeasureText(Range.doseMeasure(range.key()), reader);
    MeasureText speed = new MeasureText(Measure.SPEED, reader);
    return new MachineView(
        TrialText.laser(found.laser(), reader),
        new Verdict(
            found.judgement().verdict().label(),
            found.judgement().verdict().givesNumber() ? "box-note" : "box-warn",
            found.judgement().reasons()),
        factor.map(known -> known.factor().sentence()).orElse(null),
        found.equalDose().basis().map(OnMyMachine.Basis::words).orElse(null),
        found.equalDose().spacingMm() == null
            ? null
            : QuantityPrinter.print(
                found.equalDose().spacingMm(), QuantityKind.LINE_SPACING, reader),
        new Speeds(
            speed.unit(),
            found.equalDose().lines().stream()
                .map(line -> dose.told(line.dose()) + " " + dose.unit())
                .toList(),
            rows(found, speed)),
        found.sideBySide().stream().map(c -> beside(c, reader)).toList());
  }

  private static List<Row> rows(OnMyMachine found, MeasureText speed) {
    List<Line> lines = found.equalDose().lines();
    Double top = found.laser().maxSpeedMmS();
    List<Row> rows = new ArrayList<>();
    int longest = lines.stream().mapToInt(l -> l.points().size()).max().orElse(0);
    for (int i = 1; i < longest; i += 2) {
      Double percent = null;
      List<String> speeds = new ArrayList<>();
      for (Line line : lines) {
        IsoDose.Point point = i < line.points().size() ? line.points().get(i) : null;
        speeds.add(point == null ? "" : speed.settable(point.speedMmS(), top));
        percent = point == null ? percent : Double.valueOf(point.powerPercent());
      }
      if (percent != null) {
        rows.add(new Row(QuantityPrinter.number(percent, speed.reader().style()) + " %", speeds));
      }
    }
    return rows;
  }

  private static Beside beside(Comparison c, UnitPreferences reader) {
    return new Beside(
        c.name(),
        number(c.from(), c.unit(), reader),
        number(c.to(), c.unit(), reader),
        c.ratio() == null ? "" : QuantityPrinter.number(c.ratio(), reader.style()) + " times");
  }

  private static String number(Double value, String unit, UnitPreferences reader) {
    if (value == null) {
      return "not known";
    }
    QuantityKind kind = KINDS.get(unit);
    if (kind != null) {
      return QuantityPrinter.print(value, kind, reader);
    }
    if (unit.equals(IRRADIANCE)) {
      return QuantityPrinter.number(value / 1000, reader.style()) + " kW/cm²";
    }
    return QuantityPrinter.number(value, reader.style()) + (unit.isEmpty() ? "" : " " + unit);
  }
}

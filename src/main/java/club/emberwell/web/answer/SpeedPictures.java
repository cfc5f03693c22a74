package club.emberwell.web.answer;

import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.answer.Start;
import club.emberwell.laser.dose.Settable;
import club.emberwell.report.ReportBrief;
import club.emberwell.search.query.Measure;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.SpeedPlot;
import club.emberwell.web.plot.SpeedPlot.Point;
import club.emberwell.web.range.MeasureText;
import java.util.Map;
import java.util.Optional;

/** Draws speed against power on the reader's machine. */
final class SpeedPictures {
  private SpeedPictures() {}

  /** Null where no dose may be carried over. */
  static SpeedPlot of(
      OnMyMachine mine, Optional<Start> start, MeasureText dose, Map<Long, ReportBrief> reports) {
    if (mine.equalDose().lines().isEmpty()) {
      return null;
    }
    MeasureText speed = new MeasureText(Measure.SPEED, dose.reader());
    Double top = mine.laser().maxSpeedMmS();
    return SpeedPlot.of(
        new SpeedPlot.Input(
            new Caption(
                "speed",
                "Speed against power on your machine",
                "Between the outer lines the dose is where tests were right. A dot is a member's"
                    + " setting moved to your machine."),
            mine.equalDose().lines().stream().map(line -> line(line, speed)).toList(),
            mine.moved().stream()
                .filter(moved -> reports.containsKey(moved.from().made().report()))
                .map(moved -> setting(moved, top, speed, dose, reports))
                .toList(),
            top == null ? null : speed.value(top),
            start.flatMap(s -> start(s, mine, speed)).orElse(null)),
        "speed, " + speed.unit(),
        speed::tick);
  }

  private static SpeedPlot.Equal line(OnMyMachine.Line line, MeasureText speed) {
    return new SpeedPlot.Equal(
        line.place() == OnMyMachine.Place.MIDDLE ? "speed-middle" : "speed-edge",
        line.points().stream()
            .map(p -> new Point(p.powerPercent(), speed.value(p.speedMmS())))
            .toList());
  }

  private static SpeedPlot.Setting setting(
      OnMyMachine.Moved moved,
      Double top,
      MeasureText speed,
      MeasureText dose,
      Map<Long, ReportBrief> reports) {
    ReportBrief report = reports.get(moved.from().made().report());
    double set = Settable.speed(moved.speedMmS(), top, speed.reader());
    double given = moved.from().dose() * moved.speedMmS() / set;
    return new SpeedPlot.Setting(
        new Point(moved.powerPercent(), speed.value(moved.speedMmS())),
        "/reports/" + report.id(),
        "%s: %s at %s %%, %s %s here"
            .formatted(
                report.author(),
                dose.told(given) + " " + dose.unit(),
                Math.round(moved.powerPercent()),
                speed.tick(speed.value(set)),
                speed.unit()));
  }

  /** Only where it has the spacing and the one pass that the lines are drawn for. */
  private static Optional<SpeedPlot.Setting> start(
      Start start, OnMyMachine mine, MeasureText speed) {
    Double percent = start.settings().powerPercent();
    Double spacing = start.settings().lineSpacingMm();
    boolean same =
        percent != null
            && start.settings().passes() == 1
            && !start.settings().crossed()
            && (mine.equalDose().spacingMm() == null
                || mine.equalDose().spacingMm().equals(spacing));
    return same
        ? Optional.of(
            new SpeedPlot.Setting(
                new Point(percent, speed.value(start.settings().speedMmS())), "", "start"))
        : Optional.empty();
  }
}

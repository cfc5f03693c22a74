package club.emberwell.grid.plan;

import club.emberwell.grid.plan.GridPlan.Cell;
import club.emberwell.laser.Direction;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Dose;
import java.util.List;

/**
 * How long a grid takes, as an estimate.
 *
 * @param seconds all of it
 * @param beam of these with the beam on
 * @param motion what was reckoned with
 */
public record BurnTime(double seconds, double beam, Kinematics motion) {
  /** How it is reckoned, in words. */
  public static final String FORMULA =
      "A filled cell has (cell ÷ line spacing) lines. A line takes (cell + 2 × overscan) ÷ speed +"
          + " speed ÷ acceleration; where it is too short to reach the speed, 2 × √(length ÷"
          + " acceleration). Between lines comes the step of one line spacing; one-way lines run"
          + " back first. All of that times the passes, twice for cross-hatch. A cut or a score is"
          + " the outline of the cell: four sides. Then the way from cell to cell. Labels are not"
          + " in it.";

  private static final int SIDES = 4;

  /** The same of all cells that are burned. */
  static BurnTime of(List<Cell> cells, Laser laser, Process process, Layout layout, Kinematics m) {
    double seconds = 0;
    double beam = 0;
    for (Cell cell : cells) {
      if (cell.burned() && cell.settings().speedMmS() != null) {
        Work work = new Work(process, cell.settings(), layout.cell());
        seconds += work.seconds(m) + m.move(layout.cell() + layout.gap(), m.jump()) + m.settle();
        beam += work.beam();
      }
    }
    return new BurnTime(seconds, beam, m);
  }

  /**
   * One cell.
   *
   * @param side mm
   */
  record Work(Process process, Settings settings, double side) {
    private double runs() {
      Double runs = Dose.runs(process, settings);
      return runs == null ? 1 : runs;
    }

    /** Nothing is known of how many without a line spacing: then as one line. */
    private double lines() {
      if (process.doseKind() == DoseKind.LINE) {
        return SIDES;
      }
      Double spacing = settings.lineSpacingMm();
      return spacing == null ? 1 : Math.max(1, Math.ceil(side / spacing - 1e-9));
    }

    double beam() {
      return runs() * lines() * side / settings.speedMmS();
    }

    double seconds(Kinematics m) {
      double speed = settings.speedMmS();
      if (process.doseKind() == DoseKind.LINE) {
        return runs() * SIDES * (m.move(side, speed) + m.settle());
      }
      double length = side + 2 * m.beside(speed);
      double spacing = settings.lineSpacingMm() == null ? 0 : settings.lineSpacingMm();
      double line = m.move(length, speed) + m.move(spacing, m.jump()) + m.settle();
      boolean back = Direction.ONE_WAY.code().equals(settings.values().get(Setting.DIRECTION));
      return runs() * lines() * (back ? line + m.move(length, m.jump()) : line);
    }
  }
}

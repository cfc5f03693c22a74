package club.emberwell.report.reading;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.Setting;
import club.emberwell.quantity.WrittenQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Entries for tests, changed field by field. */
public final class Entries {
  private Entries() {}

  /** CO2, 40 W, gantry. */
  public static WrittenLaser laser() {
    return new WrittenLaser(
        "co2", text("10.6 um"), text("40 W"), "gantry", "cw", null, text("150 um"));
  }

  /** 100 % at 400 mm/s and 0.1 mm: 1 J/mm2 with 40 W. */
  public static WrittenSettings settings() {
    return settings("100 %", "400 mm/s", "0.1 mm").with(Setting.PASSES, 1);
  }

  public static WrittenTrial trial(WrittenSettings settings) {
    return new WrittenTrial(null, null, settings, "right", 4, List.of());
  }

  public static WrittenReport report() {
    return with(settings());
  }

  public static WrittenReport with(WrittenSettings settings) {
    return with(List.of(trial(settings)));
  }

  public static WrittenReport with(List<WrittenTrial> trials) {
    return work("birch plywood", null, null, "surface engraving", trials);
  }

  public static WrittenReport work(String material, String coating, String colour) {
    return work(material, coating, colour, "surface engraving", List.of(trial(settings())));
  }

  public static WrittenReport work(
      String material, String coating, String colour, String process, List<WrittenTrial> trials) {
    return new WrittenReport(
        null,
        laser(),
        WrittenWork.of(process)
            .with(WorkProperty.MATERIAL, material)
            .with(WorkProperty.COATING, coating)
            .with(WorkProperty.COLOUR, colour),
        trials,
        null,
        null);
  }

  /** The settings with another power, speed and spacing. */
  public static WrittenSettings settings(String power, String speed, String spacing) {
    return WrittenSettings.NONE
        .with(Setting.POWER, text(power))
        .with(Setting.SPEED, text(speed))
        .with(Setting.LINE_SPACING, text(spacing));
  }

  /** A grid of this many rows and columns, all alike but for what is changed. */
  public static WrittenReport grid(int rows, int columns, UnaryOperator<WrittenTrial> change) {
    List<WrittenTrial> trials = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        trials.add(
            change.apply(new WrittenTrial(row, column, settings(), "right", null, List.of())));
      }
    }
    return with(trials);
  }

  public static WrittenQuantity text(String text) {
    return text == null ? null : WrittenQuantity.of(text);
  }
}

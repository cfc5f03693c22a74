package club.emberwell.report;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import java.math.BigDecimal;
import java.util.List;

/** Fills what somebody who tried a report again did not say with what the original says. */
final class Repeat {
  private Repeat() {}

  /**
   * Settings are taken over field by field where both are single trials; a number the original's
   * author wrote in another style is taken over as its value.
   */
  static WrittenReport fill(WrittenReport w, NumberStyle style, StoredReport original) {
    return new WrittenReport(
        w.machine(),
        w.laser(),
        work(w.work(), original, style == original.style()),
        trials(w.trials(), original, style == original.style()),
        original.snapshot().id(),
        w.confirmed());
  }

  /** What describes one piece belongs together: another material drops all the rest of it. */
  private static WrittenWork work(WrittenWork w, StoredReport original, boolean sameStyle) {
    WrittenWork from = original.written().work();
    WrittenWork filled = new WrittenWork(or(w.process(), from.process()), w.values());
    if (w.of(WorkProperty.MATERIAL) != null) {
      return filled;
    }
    Work read = original.snapshot().work();
    for (WorkProperty property : WorkProperty.values()) {
      Object theirs =
          switch (property.value().shape()) {
            case WORD -> from.of(property);
            case QUANTITY -> kept(from.quantity(property), sameStyle, amount(property, read));
            case TEXT, LINES -> null;
          };
      filled = filled.with(property, or(w.of(property), theirs));
    }
    return filled;
  }

  private static Amount amount(WorkProperty property, Work read) {
    Double number = read.number(property);
    return number == null ? null : new Amount(property.value().kind(), number);
  }

  private static List<WrittenTrial> trials(
      List<WrittenTrial> mine, StoredReport original, boolean sameStyle) {
    boolean both =
        mine != null && mine.size() == 1 && mine.get(0) != null && original.written().plain();
    if (!both) {
      return mine;
    }
    WrittenTrial trial = mine.get(0);
    WrittenSettings filled = settings(trial.settings(), original, sameStyle);
    return List.of(
        new WrittenTrial(
            trial.row(), trial.column(), filled, trial.effect(), trial.quality(), trial.defects()));
  }

  private static WrittenSettings settings(
      WrittenSettings given, StoredReport original, boolean sameStyle) {
    WrittenSettings from = original.written().trials().get(0).settings();
    Settings read = original.snapshot().trials().get(0).settings();
    WrittenSettings filled = given == null ? WrittenSettings.NONE : given;
    for (Setting setting : Setting.values()) {
      if (filled.of(setting) == null) {
        Object theirs = from.of(setting);
        filled =
            filled.with(
                setting,
                theirs instanceof WrittenQuantity typed
                    ? kept(typed, sameStyle, read.amount(setting))
                    : theirs);
      }
    }
    return filled;
  }

  private static WrittenQuantity kept(WrittenQuantity from, boolean sameStyle, Amount read) {
    if (from == null || from.text() == null || sameStyle || read == null) {
      return from;
    }
    return new WrittenQuantity(
        null, BigDecimal.valueOf(read.number()), read.kind().canonicalUnit());
  }

  private static <T> T or(T mine, T theirs) {
    return mine == null ? theirs : mine;
  }
}

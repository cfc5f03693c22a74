package club.emberwell.report.reading;

import club.emberwell.catalog.Catalog;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import java.util.List;

/**
 * Reads a report from what was written: a pure function of the entry, the machine's laser, the
 * catalog and the writer's number style. Bad input never throws; it comes back as errors.
 */
public final class ReportInterpreter {
  /** Goes up whenever the same entry may be read differently; stored with every report. */
  public static final int VERSION = 3;

  /** One step; each may use what those before it read. */
  interface Step {
    void read(Draft draft);
  }

  private static final List<Step> STEPS =
      List.of(
          new LaserStep(),
          new WorkStep(),
          new VocabularyStep(),
          TrialStep.JUDGED,
          new HazardStep());

  private ReportInterpreter() {}

  /**
   * @param machine laser of the machine the entry names, null where it names none or an unknown one
   */
  public static Interpretation read(
      WrittenReport written, Laser machine, Catalog catalog, NumberStyle style) {
    Draft draft = new Draft(written, machine, catalog, style);
    STEPS.forEach(step -> step.read(draft));
    return draft.done();
  }

  /**
   * The same of settings that are kept, not tried: nobody says how they came out.
   *
   * @param machine as in {@link #read}
   */
  public static Interpretation readKept(
      WrittenReport written, Laser machine, Catalog catalog, NumberStyle style) {
    Draft draft = new Draft(written, machine, catalog, style);
    STEPS.forEach(step -> (step instanceof TrialStep ? TrialStep.NOT_JUDGED : step).read(draft));
    return draft.done();
  }

  /**
   * The same of work that is only planned: laser, work and whether it is prohibited, without
   * trials.
   *
   * @param machine as in {@link #read}
   */
  public static Interpretation readPlanned(
      WrittenReport written, Laser machine, Catalog catalog, NumberStyle style) {
    Draft draft = new Draft(written, machine, catalog, style);
    STEPS.stream().filter(step -> !(step instanceof TrialStep)).forEach(step -> step.read(draft));
    return draft.done();
  }
}

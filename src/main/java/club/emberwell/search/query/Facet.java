package club.emberwell.search.query;

import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.laser.PowerClass;
import club.emberwell.remark.Coded;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WorkProperty;
import java.util.Optional;
import java.util.function.BiFunction;

/** What a search can be narrowed by. The code is the word in the API and in addresses. */
public enum Facet implements Coded {
  SOURCE("source", "Type of laser", (r, t) -> r.laser().source().code()),
  POWER_CLASS(
      "powerClass", "Rated power", (r, t) -> PowerClass.ofRated(r.laser().ratedPowerW()).code()),
  BAND("band", "Wavelength", (r, t) -> r.laser().band().code()),
  REGIME("regime", "Type of beam", (r, t) -> r.laser().regime().code()),
  MATERIAL(WorkProperty.MATERIAL),
  COATING(WorkProperty.COATING),
  COLOUR(WorkProperty.COLOUR),
  THICKNESS(WorkProperty.THICKNESS, (r, t) -> thickness(r)),
  RESULT_COLOUR(WorkProperty.RESULT_COLOUR),
  PROCESS("process", "Process", (r, t) -> r.process().code()),
  EFFECT("effect", "Effect", (r, t) -> t.effect().code()),
  MOTION(
      "motion", "Motion", (r, t) -> r.laser().motion() == null ? null : r.laser().motion().code()),
  MACHINE_MODEL("machineModel", "Machine model", (r, t) -> r.machine().model()),
  MACHINE_NAME("machineName", "Machine", (r, t) -> r.machine().name()),
  CONTROLLER_VERSION(WorkProperty.CONTROLLER_VERSION),
  LOT(WorkProperty.LOT),
  SUPPLIER(WorkProperty.SUPPLIER),
  PHOTO("photo", "Photo", (r, t) -> Pictured.of(r).code),
  MEMBER("member", "Member", (r, t) -> r.author().handle());

  /** The value of a report that does not say. */
  public static final String NOT_GIVEN = "not-given";

  /** The value of a report whose words no moderator has filed yet. */
  public static final String NOT_FILED = "not-filed";

  /** What a trial says. */
  private interface Source extends BiFunction<ReportSnapshot, TrialSnapshot, String> {}

  /** Whether a report has a picture. */
  enum Pictured {
    WITH("with", "With a photo"),
    WITHOUT("without", "Without a photo");

    final String code;
    final String label;

    Pictured(String code, String label) {
      this.code = code;
      this.label = label;
    }

    private static Pictured of(ReportSnapshot report) {
      return report.photos() > 0 ? WITH : WITHOUT;
    }
  }

  private final String code;
  private final String label;
  private final WorkProperty work;
  private final Source source;

  Facet(String code, String label, Source source) {
    this.code = code;
    this.label = label;
    this.work = null;
    this.source = source;
  }

  Facet(WorkProperty property) {
    this(property, (r, t) -> r.work().typed(property));
  }

  Facet(WorkProperty property, Source source) {
    this.code = property.code();
    this.label = property.label();
    this.work = property;
    this.source = source;
  }

  private static String thickness(ReportSnapshot report) {
    return Optional.ofNullable(report.work().thicknessMm())
        .flatMap(ThicknessClass::of)
        .map(ThicknessClass::code)
        .orElse(null);
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** What the report says of its work, where that is narrowed by. */
  public Optional<WorkProperty> work() {
    return Optional.ofNullable(work);
  }

  /** The vocabulary its values come from, where they do; such values form a tree. */
  public Optional<TermKind> vocabulary() {
    return work().map(property -> property.value().vocabulary());
  }

  /** The value as the report has it; null where it does not say. */
  public String of(ReportSnapshot report, TrialSnapshot trial) {
    return source.apply(report, trial);
  }

  /** True where the trials of one report can differ in it. */
  public boolean ofTrial() {
    return this == EFFECT;
  }

  /** Name of the index field, which holds exactly one value per trial. */
  public String field() {
    return "f_" + code;
  }
}

package club.emberwell.web.grid;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.grid.plan.BurnTime;
import club.emberwell.grid.plan.Cover;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.grid.plan.Layout;
import club.emberwell.grid.sheet.AxisLabels;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Makes the view of a plan, in the reader's words and units. */
final class PlanViews {
  private static final double MINUTE = 60;
  private static final double HOUR = 3600;
  private static final int FINE = 3;
  private static final int COARSE = 2;
  private static final double FINE_STEP = 1.08;

  private final GridPlan plan;
  private final UnitPreferences reader;
  private final AxisLabels across;
  private final AxisLabels down;

  private PlanViews(GridPlan plan, UnitPreferences reader) {
    this.plan = plan;
    this.reader = reader;
    this.across = AxisLabels.of(plan.axes().across(), reader);
    this.down = AxisLabels.of(plan.axes().down(), reader);
  }

  /**
   * @param machine name of the machine, or null where a laser is described
   */
  static PlanView of(
      Planned planned, String machine, Vocabulary vocabulary, UnitPreferences reader) {
    GridPlan plan = planned.plan();
    PlanViews views = new PlanViews(plan, reader);
    String laser = TrialText.laser(plan.laser(), reader);
    return new PlanView(
        new PlanView.Head(
            WorkText.of(plan.work(), vocabulary, reader),
            plan.process().label().toLowerCase(Locale.ROOT),
            machine == null ? laser : machine,
            laser,
            QuantityPrinter.print(plan.laser().wavelengthNm(), QuantityKind.WAVELENGTH, reader)),
        views.said(),
        views.table(),
        TrialText.plain(plan.base(), reader),
        views.rest(),
        CautionsView.of(planned.cautions(), vocabulary, reader));
  }

  private QuantityKind kind() {
    return plan.process().doseKind().quantity();
  }

  private String unit() {
    return QuantityPrinter.unitLabel(kind(), reader);
  }

  /** So many digits as tell neighbours apart. */
  private String dose(double canonical) {
    Double step = plan.cover().step();
    int digits = step != null && step < FINE_STEP ? FINE : COARSE;
    return QuantityPrinter.number(
        RoundNumber.significant(QuantityPrinter.value(canonical, kind(), reader), digits),
        reader.style());
  }

  private List<String> said() {
    List<String> said = new ArrayList<>();
    Layout layout = plan.layout();
    int blanks = layout.parts().blanks();
    said.add(
        "%d tests on %s, %s x %s mm, %s."
            .formatted(
                plan.tests(),
                blanks == 1 ? "one blank" : blanks + " blanks",
                millimetres(layout.width()),
                millimetres(layout.height()),
                about(plan.burn().seconds())));
    said.addAll(covered());
    return said;
  }

  private List<String> covered() {
    Cover cover = plan.cover();
    List<String> said = new ArrayList<>();
    if (cover.low() == null) {
      return said;
    }
    String covers = "Covers %s to %s %s".formatted(dose(cover.low()), dose(cover.high()), unit());
    said.add(
        cover.inside() == null || !cover.whole()
            ? covers + "."
            : covers + ": with " + tenths(cover.inside()) + " chance your best is inside.");
    if (!cover.whole()) {
      said.add(
          "Your machine cannot reach all of %s to %s %s."
              .formatted(dose(cover.from()), dose(cover.to()), unit()));
    }
    if (cover.step() != null) {
      said.add("Each dose is at most %s times the one below.".formatted(times(cover.step())));
    }
    return said;
  }

  private String times(double ratio) {
    return QuantityPrinter.number(Math.round(ratio * 100) / 100.0, reader.style());
  }

  private static String tenths(double share) {
    return Math.round(share * 10) + " in 10";
  }

  private static String millimetres(double mm) {
    return Long.toString(Math.round(mm));
  }

  /** "about 40 s", "about 4 min", "about 1 h 10 min". */
  static String about(double seconds) {
    if (seconds < MINUTE) {
      return "about " + Math.max(1, Math.round(seconds)) + " s";
    }
    if (seconds < HOUR) {
      return "about " + Math.round(seconds / MINUTE) + " min";
    }
    long minutes = Math.round(seconds / MINUTE);
    return "about " + minutes / 60 + " h " + minutes % 60 + " min";
  }

  private PlanView.Table table() {
    List<PlanView.Row> rows =
        IntStream.range(0, plan.rows())
            .mapToObj(
                row ->
                    new PlanView.Row(
                        down.numbers().get(row),
                        IntStream.range(0, plan.columns())
                            .mapToObj(column -> cell(plan.cell(row, column)))
                            .toList()))
            .toList();
    return new PlanView.Table(
        down.unit(),
        down.name() + " down, " + across.name().toLowerCase(Locale.ROOT) + " across",
        IntStream.range(0, plan.columns()).mapToObj(across::at).toList(),
        rows,
        unit(),
        plan.cells().stream().anyMatch(cell -> cell.chance() != null),
        plan.cells().stream().anyMatch(cell -> !cell.burned()));
  }

  private PlanView.Cell cell(GridPlan.Cell cell) {
    String at = down.at(cell.row()) + ", " + across.at(cell.column());
    if (!cell.burned()) {
      return new PlanView.Cell(
          "plan-out", "", cell.leftOut().brief(), at + ": left out. " + cell.leftOut().reason());
    }
    String dose = cell.dose() == null ? "" : dose(cell.dose());
    String chance = cell.chance() == null ? "" : percent(cell.chance());
    String name =
        at
            + (dose.isEmpty() ? ": dose not known" : ": " + dose + " " + unit())
            + (chance.isEmpty() ? "." : ", " + chance + " chance that it comes out right.");
    return new PlanView.Cell(shade(cell.chance()), dose, chance, name);
  }

  private static String percent(double share) {
    return Math.round(share * 20) * 5 + " %";
  }

  /** The darker the likelier; the number says the same. */
  private static String shade(Double chance) {
    if (chance == null) {
      return "plan-unknown";
    }
    return chance < 0.3 ? "plan-0" : chance < 0.6 ? "plan-1" : chance < 0.8 ? "plan-2" : "plan-3";
  }

  private List<String> rest() {
    List<String> rest = new ArrayList<>();
    double acceleration = plan.burn().motion().acceleration();
    String head =
        Double.isFinite(acceleration)
            ? "Reckoned with "
                + QuantityPrinter.print(acceleration, QuantityKind.ACCELERATION, reader)
                + (plan.burn().motion().given() ? "." : ", as is usual; no source.")
            : "Mirrors need next to no time to speed up; each turn waits half a millisecond (usual;"
                + " no source).";
    rest.add("The time is an estimate. " + head);
    rest.add(BurnTime.FORMULA);
    if (plan.cover().basis() != Cover.Basis.BY_HAND) {
      rest.add("These are the fewest tests that cover these doses in such steps.");
    }
    if (plan.layout().room().why() != null) {
      rest.add(
          plan.layout().room().why()
              + " That is "
              + millimetres(plan.layout().room().width())
              + " mm.");
    }
    return rest;
  }
}

package club.emberwell.exchange.open;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Effect;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue;
import club.emberwell.laser.dose.DoseFormula;
import club.emberwell.member.Licence;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UtcTime;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.WorkProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The table of trials: a row a trial, its columns from the catalogues of settings, of the work and
 * of what follows. What was typed stands beside each value in its canonical unit.
 */
final class TrialTable {
  /** Ends the name of the column with what was typed. */
  static final String WRITTEN = "Written";

  static final List<Column> COLUMNS =
      Stream.of(record(), laser(), work(), settings(), outcome(), derived())
          .flatMap(List::stream)
          .toList();

  static final List<String> HEAD = COLUMNS.stream().map(Column::name).toList();

  private TrialTable() {}

  /** The cells of a trial, in the order of the columns. */
  static List<Object> cells(TrialRow row) {
    List<Object> cells = new ArrayList<>(COLUMNS.size());
    for (Column column : COLUMNS) {
      cells.add(column.cell().apply(row));
    }
    return cells;
  }

  private static List<Column> record() {
    return List.of(
        Column.text("report", "Report", r -> r.snapshot().id()).required(),
        Column.whole("trial", "Place among the trials of the report, from 1", r -> r.place() + 1)
            .required(),
        Column.whole("row", "Row in the grid, from 0", r -> r.trial().row()),
        Column.whole("column", "Column in the grid, from 0", r -> r.trial().column()),
        Column.of(
                "createdAt",
                "When it was posted (UTC)",
                "datetime",
                r -> UtcTime.of(r.snapshot().createdAt()))
            .required(),
        Column.of(
                "updatedAt",
                "When it last changed (UTC)",
                "datetime",
                r -> UtcTime.of(r.snapshot().updatedAt()))
            .required(),
        Column.whole("version", "Version of the report", r -> r.snapshot().version()).required(),
        Column.code(
            "licence", "Licence (SPDX)", Licence.class, r -> r.snapshot().standing().licence()),
        Column.text(
            "author", "Author, where they want to be named", r -> r.snapshot().author().handle()),
        Column.whole(
                "voice",
                "Number of the author within this file",
                r -> r.ordinals().member(r.snapshot().author().number()))
            .required(),
        Column.text(
            "origin",
            "Club it comes from, where it is another",
            r -> r.report().origin().address()),
        Column.text("repeatOf", "Report that it repeats", r -> r.snapshot().repeatOf()),
        Column.whole("photos", "Pictures", r -> r.snapshot().photos()).required());
  }

  private static List<Column> laser() {
    return List.of(
        Column.whole(
            "machine",
            "Number of the machine within this file",
            r -> r.ordinals().machine(r.snapshot().machine().number())),
        Column.text(
            "machineModel",
            "What its maker calls the machine",
            r -> r.snapshot().machine().model()),
        Column.code("source", "Laser source", LaserSource.class, r -> r.laser().source()),
        Column.quantity(
                "wavelength", "Wavelength", QuantityKind.WAVELENGTH, r -> r.laser().wavelengthNm())
            .required(),
        Column.quantity(
                "ratedPower", "Rated power", QuantityKind.POWER, r -> r.laser().ratedPowerW())
            .required(),
        Column.code("motion", "Motion", Motion.class, r -> r.laser().motion()),
        Column.code("regime", "Regime by pulse duration", Regime.class, r -> r.laser().regime()),
        Column.of("gated", "Continuous, dimmed by switching", "boolean", r -> r.laser().gated())
            .required(),
        Column.quantity(
            "lens",
            "Focal length of the lens",
            QuantityKind.FOCAL_LENGTH,
            r -> r.laser().lensFocalMm()),
        Column.quantity(
            "beamDiameter",
            "Beam diameter at focus (1/e2)",
            QuantityKind.BEAM_DIAMETER,
            r -> r.laser().beamDiameterUm()),
        Column.quantity(
            "maxSpeed",
            "Highest speed of the machine",
            QuantityKind.SPEED,
            r -> r.laser().maxSpeedMmS()));
  }

  private static List<Column> work() {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.code("process", "Process", Process.class, r -> r.snapshot().process()));
    for (WorkProperty property : WorkProperty.values()) {
      String name = property.code();
      String label = property.label();
      columns.addAll(
          switch (property.value().shape()) {
            case WORD ->
                List.of(
                    Column.text(name, label, r -> r.snapshot().work().word(property).slug()),
                    typed(name, label, r -> r.snapshot().work().word(property).written()));
            case QUANTITY ->
                List.of(
                    Column.quantity(
                        name,
                        label,
                        property.value().kind(),
                        r -> r.snapshot().work().number(property)),
                    typed(name, label, r -> text(r.report().written().work().of(property))));
            case TEXT, LINES ->
                List.of(Column.text(name, label, r -> r.snapshot().work().text(property)));
          });
    }
    columns.add(
        Column.text(
            "cautions",
            "Cautions of the work when this was written, by id, the heaviest first",
            TrialRow::cautionCodes));
    return columns;
  }

  private static Column typed(String name, String label, Function<TrialRow, Object> cell) {
    return Column.text(name + WRITTEN, label + ", as typed", cell);
  }

  /** A text with its unit; a number that came with a code as both. */
  private static String text(Object written) {
    if (written instanceof WrittenQuantity quantity) {
      return quantity.typed();
    }
    return written == null ? null : written.toString();
  }

  private static List<Column> settings() {
    return Stream.of(Setting.values()).flatMap(TrialTable::columns).toList();
  }

  private static Stream<Column> columns(Setting setting) {
    SettingValue value = setting.value();
    String name = setting.code();
    String label = setting.label();
    return switch (value.shape()) {
      case QUANTITY ->
          Stream.concat(
              value.bases().stream().map(basis -> amount(setting, basis)),
              Stream.of(typed(name, label, r -> text(r.written().of(setting)))));
      case COUNT -> Stream.of(Column.whole(name, label, r -> of(r, setting)));
      case FLAG -> Stream.of(Column.of(name, label, "boolean", r -> of(r, setting)));
      case CHOICE ->
          Stream.of(
              Column.text(name, label, r -> of(r, setting))
                  .choices(value.choices().stream().map(SettingValue.Choice::code).toList()));
    };
  }

  private static Object of(TrialRow row, Setting setting) {
    return row.trial().settings().values().get(setting);
  }

  /** Under the setting's code, or where it may be given in several kinds under that of the kind. */
  private static Column amount(Setting setting, SettingValue.Basis basis) {
    boolean several = setting.value().bases().size() > 1;
    String name = several ? basis.kind().code() : setting.code();
    String title =
        several ? setting.label() + " in " + basis.kind().canonicalUnit() : setting.label();
    return Column.quantity(
        name,
        title,
        basis.kind(),
        r -> {
          Amount amount = r.trial().settings().amount(setting);
          return amount == null || amount.kind() != basis.kind()
              ? null
              : Double.valueOf(amount.number());
        });
  }

  private static List<Column> outcome() {
    return List.of(
        Column.code("effect", "Effect", Effect.class, r -> r.trial().effect()),
        Column.whole("quality", "Quality of a right result, 1 to 5", r -> r.trial().quality()),
        Column.text("defects", "Defects, with a space between", r -> defects(r)));
  }

  private static String defects(TrialRow row) {
    List<String> defects = row.trial().defects();
    return defects.isEmpty() ? null : String.join(" ", defects);
  }

  private static List<Column> derived() {
    return Stream.of(DoseFormula.values())
        .map(
            formula ->
                Column.number(
                    formula.field(),
                    formula.title(),
                    formula.unit(),
                    r -> formula.value(r.trial().derived())))
        .toList();
  }
}

package club.emberwell.web.dose;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.safety.Ventilation;
import club.emberwell.laser.safety.Ventilation.Carried;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Duct and room air in one state.
 *
 * @param values empty before anything was asked
 * @param closing ends every answer
 */
record AirView(Form form, List<Worked> values, List<String> missing, String closing) {
  private static final double USUAL_REMOVED_PERCENT = 99;
  private static final double MM3_PER_M3 = 1e9;
  private static final String VELOCITIES =
      "ACGIH Industrial Ventilation, 2009 table as quoted on a public page";
  private static final String FLOW = "Continuity: v = Q / A, A = π d² / 4";

  static AirView of(SentForm sent, NumberStyle style) {
    Form form = form(sent.values());
    if (sent.lacks(List.of("flow", "duct", "length", "width", "height"))) {
      return new AirView(form, List.of(), List.of(), Ventilation.CLOSING);
    }
    FieldReader in = new FieldReader(style);
    in.required("/flow", sent.text("flow"));
    Double flow =
        in.quantity(
            "/flow", QuantityKind.AIR_FLOW, sent.quantity("flow"), CalculatorLimits.FLOW_M3H);
    Double duct = length(in, sent, "duct", CalculatorLimits.DUCT_MM);
    Optional<Carried> carried = carried(in, sent.text("carried"));
    Double room = room(in, sent);
    Double removed =
        in.quantity(
            "/removed",
            QuantityKind.POWER_PERCENT,
            sent.quantity("removed"),
            CalculatorLimits.REMOVED_PERCENT);
    form.remarks(in.remarks());
    if (in.failed()) {
      return new AirView(form, List.of(), List.of(), Ventilation.CLOSING);
    }
    Answer answer = new Answer(style, new ArrayList<>(), new ArrayList<>());
    answer.duct(flow, duct, carried);
    answer.room(flow, room, removed == null ? USUAL_REMOVED_PERCENT : removed);
    return new AirView(form, answer.values(), answer.missing(), Ventilation.CLOSING);
  }

  private static Form form(Map<String, String> values) {
    Form form = new Form();
    form.add(
        Field.quantity("flow", "Air flow", "Measured, not from the fan's label: 400 m³/h, 235 cfm")
            .required());
    form.add(Field.quantity("duct", "Inside diameter of the duct", "100 mm, 4 in"));
    form.add(
        Field.of("carried", "What is in the air")
            .choices(List.of(Carried.values()), Carried::name, Carried::label)
            .value(Carried.VAPOUR_GAS_SMOKE.name()));
    form.add(Field.quantity("length", "Room length", "4 m, 13 ft"));
    form.add(Field.quantity("width", "Room width", "3 m"));
    form.add(Field.quantity("height", "Room height", "2.4 m"));
    form.add(Field.quantity("removed", "Share to remove", "99 %; empty = 99 %"));
    return form.fill(values);
  }

  private static Double length(FieldReader in, SentForm sent, String name, Bounds bounds) {
    return in.quantity("/" + name, QuantityKind.FOCAL_LENGTH, sent.quantity(name), bounds);
  }

  private static Optional<Carried> carried(FieldReader in, String code) {
    if (code == null) {
      return Optional.empty();
    }
    Optional<Carried> found =
        Stream.of(Carried.values()).filter(c -> c.name().equals(code)).findFirst();
    if (found.isEmpty()) {
      in.add(Remark.error(RemarkId.CHOICE_UNKNOWN, "/carried", "Choose one from the list."));
    }
    return found;
  }

  // All three sides or none.
  private static Double room(FieldReader in, SentForm sent) {
    List<String> sides = List.of("length", "width", "height");
    if (sent.lacks(sides)) {
      return null;
    }
    double volume = 1 / MM3_PER_M3;
    for (String side : sides) {
      in.required("/" + side, sent.text(side));
      Double mm = length(in, sent, side, CalculatorLimits.ROOM_MM);
      volume *= mm == null ? 1 : mm;
    }
    return volume;
  }

  /** Collects what the stated inputs allow. */
  private record Answer(NumberStyle style, List<Worked> values, List<String> missing) {
    void duct(double flow, Double diameter, Optional<Carried> carried) {
      if (diameter == null) {
        missing.add("Enter the duct's diameter to get the air speed.");
        return;
      }
      double speed = Ventilation.velocityMs(flow, diameter);
      values.add(
          new Worked(
              "Air speed in the duct",
              speed(speed),
              "v = Q / (π d² / 4)",
              FLOW,
              List.of("Mean over the duct; bends, filters and a bad fit change the flow.")));
      carried.ifPresent(what -> usual(what, speed, diameter));
    }

    private void usual(Carried what, double speed, double diameter) {
      String place =
          speed < what.fromMs()
              ? "Slower than usual: some of it can settle in the duct."
              : speed > what.toMs()
                  ? "Faster than usual: it costs noise and pressure."
                  : "Within the usual speeds.";
      values.add(
          new Worked(
              "Usual for " + what.label(),
              number(what.fromMs()) + " to " + speed(what.toMs()),
              place,
              VELOCITIES,
              List.of(
                  "At these speeds nothing settles in the duct. They do not say whether fumes are harmless.")));
      values.add(
          new Worked(
              "Air flow needed for these speeds",
              number(Ventilation.flowM3h(what.fromMs(), diameter))
                  + " to "
                  + number(Ventilation.flowM3h(what.toMs(), diameter))
                  + " m³/h",
              "Q = v π d² / 4",
              FLOW,
              List.of()));
    }

    void room(double flow, Double volume, double removedPercent) {
      if (volume == null) {
        missing.add(
            "Enter the room's length, width and height to get air changes and clearing time.");
        return;
      }
      double changes = Ventilation.airChangesPerHour(flow, volume);
      values.add(
          new Worked(
              "Air changes",
              number(changes) + " per hour",
              "ACH = Q / V, V = " + number(volume) + " m³",
              "Definition",
              List.of("Assumes that all of this air leaves the building and fresh air comes in.")));
      values.add(
          new Worked(
              "Until " + number(removedPercent) + " % of what was in the air is gone",
              number(Ventilation.purgeMinutes(changes, removedPercent / 100)) + " min",
              "t = ln(C0 / C) / ACH",
              "Dilution of well-mixed air",
              List.of(
                  "Assumes well-mixed air and no new fumes. Corners take longer.",
                  "Counted from the moment the fumes stop.")));
    }

    private String speed(double ms) {
      return number(ms) + " m/s (" + number(ms / Ventilation.MS_PER_FPM) + " ft/min)";
    }

    private String number(double value) {
      return QuantityPrinter.number(value, style);
    }
  }
}

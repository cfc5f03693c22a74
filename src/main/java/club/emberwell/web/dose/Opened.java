package club.emberwell.web.dose;

import club.emberwell.laser.dose.DoseFormula;
import club.emberwell.laser.dose.Formula;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.reading.DoseCalculator.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A derived value that opens to how it came about.
 *
 * @param value in the reader's unit
 * @param inputs with their values
 */
record Opened(
    String title,
    String value,
    String formula,
    List<Input> inputs,
    String source,
    List<String> caveats) {

  /** A quantity of the formula, in the unit the formula is written for. */
  record Input(String symbol, String name, String value) {}

  /** Every value that the settings give, in the order of the formulas. */
  static List<Opened> of(Answer answer, UnitPreferences reader) {
    List<Opened> found = new ArrayList<>();
    for (DoseFormula formula : DoseFormula.values()) {
      Double value = formula.value(answer.derived());
      if (value != null) {
        found.add(open(formula, value, answer, reader));
      }
    }
    return List.copyOf(found);
  }

  private static Opened open(
      DoseFormula formula, double value, Answer answer, UnitPreferences reader) {
    Formula explained = explain(formula, answer);
    return new Opened(
        explained.name(),
        print(formula, value, reader),
        explained.text(),
        explained.inputs().stream()
            .filter(input -> input.value() != null)
            .map(input -> input(input, reader.style()))
            .toList(),
        explained.source(),
        explained.caveats());
  }

  private static Formula explain(DoseFormula formula, Answer answer) {
    return formula.explain(answer.laser(), answer.process(), answer.settings());
  }

  private static Input input(Formula.Input input, NumberStyle style) {
    String number = QuantityPrinter.number(input.value(), style);
    return new Input(
        input.symbol(),
        input.name(),
        input.unit().isEmpty() ? number : number + " " + input.unit().replace("um", "µm"));
  }

  /** The value in the reader's unit; ratios and counts as bare numbers. */
  static String print(DoseFormula formula, double value, UnitPreferences reader) {
    return kind(formula)
        .map(kind -> QuantityPrinter.print(value, kind, reader))
        .orElseGet(() -> QuantityPrinter.number(value, reader.style()));
  }

  private static Optional<QuantityKind> kind(DoseFormula formula) {
    return switch (formula) {
      case AVERAGE_POWER -> Optional.of(QuantityKind.POWER);
      case AREAL_DOSE -> Optional.of(QuantityKind.AREAL_DOSE);
      case LINE_DOSE -> Optional.of(QuantityKind.LINE_DOSE);
      case PULSE_ENERGY -> Optional.of(QuantityKind.PULSE_ENERGY);
      case PEAK_POWER -> Optional.of(QuantityKind.PEAK_POWER);
      case PEAK_FLUENCE -> Optional.of(QuantityKind.FLUENCE);
      case PULSE_PITCH -> Optional.of(QuantityKind.BEAM_DIAMETER);
      case PULSE_OVERLAP, PULSES_PER_SPOT, PULSES_PER_AREA, LINE_OVERLAP -> Optional.empty();
    };
  }

  /** What each value that is not there would need: "Pulse energy (nominal): pulse …". */
  static List<String> missing(Answer answer) {
    List<String> lines = new ArrayList<>();
    for (DoseFormula formula : DoseFormula.values()) {
      if (formula.value(answer.derived()) == null && concerns(formula, answer)) {
        String needs =
            explain(formula, answer).inputs().stream()
                .filter(input -> input.value() == null)
                .map(Formula.Input::name)
                .collect(Collectors.joining(", "));
        if (!needs.isEmpty()) {
          lines.add(formula.title() + " needs: " + needs);
        }
      }
    }
    return List.copyOf(lines);
  }

  private static boolean concerns(DoseFormula formula, Answer answer) {
    return switch (answer.process().doseKind()) {
      case AREAL -> formula != DoseFormula.LINE_DOSE;
      case LINE ->
          formula != DoseFormula.AREAL_DOSE
              && formula != DoseFormula.PULSES_PER_AREA
              && formula != DoseFormula.LINE_OVERLAP;
    };
  }
}

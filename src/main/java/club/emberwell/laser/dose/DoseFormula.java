package club.emberwell.laser.dose;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import java.util.ArrayList;
import java.util.List;

/** The formula behind each value of {@link Derived}, with its source and caveats. */
public enum DoseFormula {
  AVERAGE_POWER(
      "averagePower",
      "Average power (nominal)",
      "W",
      "P = P_rated × pct / 100, or P as given in W",
      "Definition; nominal only",
      List.of(Symbol.RATED_POWER, Symbol.PERCENT, Symbol.GIVEN_POWER),
      List.of(Caveat.RATED, Caveat.PERCENT)),
  AREAL_DOSE(
      "arealDose",
      "Energy per area (dose, nominal)",
      "J/mm2",
      "F = P × n / (v × h)",
      "Energy balance; used as the single control variable for wood engraving by Kudela, Andrejko,"
          + " Kubovsky, Coatings 2023, 13(12) 2006 (abstract read)",
      List.of(Symbol.POWER, Symbol.RUNS, Symbol.SPEED, Symbol.SPACING),
      List.of(
          Caveat.RATED,
          Caveat.PERCENT,
          Caveat.SPEED,
          Caveat.RAMP,
          Caveat.ABSORBED,
          Caveat.CROSS_PASS)),
  LINE_DOSE(
      "lineDose",
      "Energy per length (line dose, nominal)",
      "J/mm",
      "E_l = P × n / v",
      "Steen & Mazumder, Laser Material Processing, 4th ed. (2010), cutting chapter (from memory);"
          + " \"linear energy density\" in Lazov et al., Materials 2025, 18(21) 5037 (abstract"
          + " read)",
      List.of(Symbol.POWER, Symbol.RUNS, Symbol.SPEED),
      List.of(
          Caveat.RATED,
          Caveat.PERCENT,
          Caveat.SPEED,
          Caveat.RAMP,
          Caveat.DUTY,
          Caveat.ABSORBED,
          Caveat.THICKNESS)),
  PULSE_ENERGY(
      "pulseEnergy",
      "Pulse energy (nominal)",
      "mJ",
      "Q = P / f",
      "ISO 11145 (from memory)",
      List.of(Symbol.POWER, Symbol.RATE),
      List.of(Caveat.RATED, Caveat.PERCENT, Caveat.DUTY)),
  PEAK_POWER(
      "peakPower",
      "Peak power (nominal)",
      "kW",
      "P_pk = Q / tau, Q = P / f",
      "RP Photonics Encyclopedia, \"Peak Power\" (from memory)",
      List.of(Symbol.POWER, Symbol.RATE, Symbol.DURATION),
      List.of(Caveat.RATED, Caveat.PERCENT, Caveat.SQUARE, Caveat.Q_SWITCH)),
  PEAK_FLUENCE(
      "peakFluence",
      "Peak fluence (nominal)",
      "J/cm2",
      "F0 = 2 × Q / (pi × (d/2)²), Q = P / f",
      "RP Photonics Spotlight 2009-10-03, \"Peak Intensity of Gaussian Beam\": on the axis twice"
          + " the mean",
      List.of(Symbol.POWER, Symbol.RATE, Symbol.DIAMETER),
      List.of(Caveat.RATED, Caveat.PERCENT, Caveat.FOCUS, Caveat.GAUSSIAN)),
  PULSE_PITCH(
      "pulsePitch",
      "Pulse pitch",
      "um",
      "p = v / f",
      "Kinematics: the distance between two pulses",
      List.of(Symbol.SPEED, Symbol.RATE),
      List.of(Caveat.SPEED)),
  PULSE_OVERLAP(
      "pulseOverlap",
      "Pulse overlap",
      "",
      "O = 1 - v / (f × d)",
      "Standard in published ablation models: 1 - v/(2 w0 f)",
      List.of(Symbol.SPEED, Symbol.RATE, Symbol.DIAMETER),
      List.of(Caveat.SPEED, Caveat.FOCUS, Caveat.GAPS)),
  PULSES_PER_SPOT(
      "pulsesPerSpot",
      "Pulses per spot along a line",
      "",
      "N = d × f / v",
      "The same relation: N = 1 / (1 - O)",
      List.of(Symbol.SPEED, Symbol.RATE, Symbol.DIAMETER),
      List.of(Caveat.SPEED, Caveat.FOCUS)),
  PULSES_PER_AREA(
      "pulsesPerArea",
      "Effective pulses per place",
      "",
      "N_eff = pi × (d/2)² × f / (v × h)",
      "Energy balance: N_eff × Q / (pi × (d/2)²) = P / (v × h)",
      List.of(Symbol.SPEED, Symbol.RATE, Symbol.DIAMETER, Symbol.SPACING),
      List.of(Caveat.SPEED, Caveat.FOCUS, Caveat.ONE_PASS)),
  LINE_OVERLAP(
      "lineOverlap",
      "Line overlap",
      "",
      "O_l = 1 - h / d",
      "Geometry",
      List.of(Symbol.SPACING, Symbol.DIAMETER),
      List.of(Caveat.FOCUS, Caveat.GAPS));

  private final String field;
  private final String title;
  private final String unit;
  private final String text;
  private final String source;
  private final List<Symbol> symbols;
  private final List<Caveat> caveats;

  DoseFormula(
      String field,
      String title,
      String unit,
      String text,
      String source,
      List<Symbol> symbols,
      List<Caveat> caveats) {
    this.field = field;
    this.title = title;
    this.unit = unit;
    this.text = text;
    this.source = source;
    this.symbols = symbols;
    this.caveats = caveats;
  }

  /** The dose by which work of this kind is compared. */
  public static DoseFormula of(DoseKind kind) {
    return kind == DoseKind.AREAL ? AREAL_DOSE : LINE_DOSE;
  }

  /** Name of the value in {@code derived} of the API. */
  public String field() {
    return field;
  }

  public String title() {
    return title;
  }

  /** UCUM unit, empty for a bare number. */
  public String unit() {
    return unit;
  }

  /** The formula in symbols. */
  public String text() {
    return text;
  }

  /** Where it is published. */
  public String source() {
    return source;
  }

  /** What to keep in mind beside the number, in sentences. */
  public List<String> caveats() {
    return caveats.stream().map(Caveat::sentence).toList();
  }

  /** The value this formula gives, or null. */
  public Double value(Derived derived) {
    return derived.of(this);
  }

  /** The formula with the very inputs of a trial, for a page that opens the number. */
  public Formula explain(Laser laser, Process process, Settings settings) {
    List<Formula.Input> inputs = new ArrayList<>();
    for (Symbol symbol : symbols) {
      inputs.add(symbol.input(laser, process, settings));
    }
    return new Formula(title, unit, text, inputs, source, caveats());
  }
}

package club.emberwell.laser.dose;

import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;

/** The quantities that stand in the dose formulas, and where each is found. */
enum Symbol {
  RATED_POWER("P_rated", "rated power", "W", (l, p, s) -> l.ratedPowerW()),
  PERCENT("pct", "power setting", "%", (l, p, s) -> s.powerPercent()),
  GIVEN_POWER("P", "power as given", "W", (l, p, s) -> s.powerW()),
  POWER("P", "average power", "W", (l, p, s) -> Dose.averagePower(l, s)),
  RUNS("n", "passes; a cross-hatch counts twice", "", (l, p, s) -> Dose.runs(p, s)),
  SPEED("v", "speed", "mm/s", (l, p, s) -> s.speedMmS()),
  SPACING("h", "line spacing", "mm", (l, p, s) -> s.lineSpacingMm()),
  RATE("f", "frequency (pulse repetition rate)", "kHz", (l, p, s) -> s.repetitionRateKhz()),
  DURATION("tau", "pulse duration (FWHM)", "ns", (l, p, s) -> s.pulseDurationNs()),
  DIAMETER("d", "beam diameter at focus (1/e²)", "um", (l, p, s) -> l.beamDiameterUm());

  /** Reads the quantity from a trial; null where it was not given. */
  private interface Source {
    Double read(Laser laser, Process process, Settings settings);
  }

  private final String symbol;
  private final String title;
  private final String unit;
  private final Source source;

  Symbol(String symbol, String title, String unit, Source source) {
    this.symbol = symbol;
    this.title = title;
    this.unit = unit;
    this.source = source;
  }

  Formula.Input input(Laser laser, Process process, Settings settings) {
    return new Formula.Input(symbol, title, source.read(laser, process, settings), unit);
  }
}

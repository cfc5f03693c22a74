package club.emberwell.consensus.range;

import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;

/**
 * What a range is about. Trials of different keys are never mixed: area with line work, continuous
 * with pulsed light and different wavelength bands have different mechanisms.
 */
public record RangeKey(Process process, WavelengthBand band, Regime regime) {

  /** In words, for headings: "Surface engraving, 405-455 nm, continuous". */
  public String words() {
    return process.label() + ", " + band.label() + ", " + regime.label();
  }
}

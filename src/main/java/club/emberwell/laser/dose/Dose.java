package club.emberwell.laser.dose;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Pulse;
import club.emberwell.laser.Settings;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/**
 * Computes the nominal dose and pulse values of a trial: formulas 2.1 to 2.10 of {@link
 * DoseFormula}. Everything is nominal: rated power, set speed, beam diameter at focus.
 */
public final class Dose {
  private Dose() {}

  /**
   * What follows from the settings; a value is null where one of its inputs is missing, not finite
   * or not positive (zero power is a valid input). Areal dose only for area work, line dose only
   * for line work. A cross pass runs the filled area a second time across, so it counts as twice
   * the passes; it means nothing for line work.
   */
  public static Derived derive(Laser laser, Process process, Settings settings) {
    boolean area = process.doseKind() == DoseKind.AREAL;
    Double power = averagePower(laser, settings);
    Double runs = runs(process, settings);
    Double speed = positive(settings.speedMmS());
    Double spacing = area ? positive(settings.lineSpacingMm()) : null;
    Double rate = positive(settings.repetitionRateKhz());
    Double duration = positive(settings.pulseDurationNs());
    Double diameter = positive(laser.beamDiameterUm());

    Double areal = present(power, runs, speed, spacing) ? power * runs / (speed * spacing) : null;
    Double line = !area && present(power, runs, speed) ? power * runs / speed : null;
    Double energy = present(power, rate) ? power / rate : null;
    Double peak = present(energy, duration) ? Pulse.peakPowerKw(energy, duration) : null;
    Double fluence = present(energy, diameter) ? Pulse.peakFluence(energy, diameter) : null;
    Double pitch = present(speed, rate) ? speed / rate : null;
    Double overlap = present(pitch, diameter) ? 1 - pitch / diameter : null;
    Double perSpot = present(pitch, diameter) ? diameter / pitch : null;
    Double perArea =
        present(pitch, diameter, spacing)
            ? Math.PI / 4 * diameter * diameter / (pitch * spacing * 1000)
            : null;
    Double lineOverlap = present(spacing, diameter) ? 1 - spacing * 1000 / diameter : null;
    Map<DoseFormula, Double> found = new EnumMap<>(DoseFormula.class);
    found.put(DoseFormula.AVERAGE_POWER, power);
    found.put(DoseFormula.AREAL_DOSE, areal);
    found.put(DoseFormula.LINE_DOSE, line);
    found.put(DoseFormula.PULSE_ENERGY, energy);
    found.put(DoseFormula.PEAK_POWER, peak);
    found.put(DoseFormula.PEAK_FLUENCE, fluence);
    found.put(DoseFormula.PULSE_PITCH, pitch);
    found.put(DoseFormula.PULSE_OVERLAP, overlap);
    found.put(DoseFormula.PULSES_PER_SPOT, perSpot);
    found.put(DoseFormula.PULSES_PER_AREA, perArea);
    found.put(DoseFormula.LINE_OVERLAP, lineOverlap);
    found.values().removeIf(Objects::isNull);
    return new Derived(found);
  }

  /** Average power in W: as given in W, else percent of the rated power; null if neither. */
  static Double averagePower(Laser laser, Settings settings) {
    if (notNegative(settings.powerW())) {
      return settings.powerW();
    }
    if (notNegative(settings.powerPercent()) && positive(laser.ratedPowerW()) != null) {
      return laser.ratedPowerW() * settings.powerPercent() / 100;
    }
    return null;
  }

  /** How often the beam runs over the work: passes (not given = 1), doubled by a cross pass. */
  public static Double runs(Process process, Settings settings) {
    int passes = settings.passes();
    if (passes < 1) {
      return null;
    }
    boolean crossed = process.doseKind() == DoseKind.AREAL && settings.crossed();
    return crossed ? 2.0 * passes : passes;
  }

  private static boolean notNegative(Double value) {
    return value != null && Double.isFinite(value) && value >= 0;
  }

  static Double positive(Double value) {
    return value != null && Double.isFinite(value) && value > 0 ? value : null;
  }

  private static boolean present(Double... values) {
    for (Double value : values) {
      if (value == null) {
        return false;
      }
    }
    return true;
  }
}

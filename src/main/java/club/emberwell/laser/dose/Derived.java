package club.emberwell.laser.dose;

import club.emberwell.laser.DoseKind;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * What follows from a laser and its settings, by formula and in its unit. All nominal; what misses
 * an input is not in it.
 */
public record Derived(Map<DoseFormula, Double> values) {
  public static final Derived NOTHING = new Derived(Map.of());

  public Derived {
    Map<DoseFormula, Double> copy = new EnumMap<>(DoseFormula.class);
    copy.putAll(values);
    values = Collections.unmodifiableMap(copy);
  }

  /** Null where an input is missing. */
  public Double of(DoseFormula formula) {
    return values.get(formula);
  }

  /** W. */
  public Double averagePowerW() {
    return of(DoseFormula.AVERAGE_POWER);
  }

  /** The dose by which work of this kind is compared; null where an input is missing. */
  public Double dose(DoseKind kind) {
    return of(DoseFormula.of(kind));
  }

  /** J/mm2, area work only. */
  public Double arealDose() {
    return of(DoseFormula.AREAL_DOSE);
  }

  /** J/mm, line work only. */
  public Double lineDose() {
    return of(DoseFormula.LINE_DOSE);
  }

  /** mJ. */
  public Double pulseEnergyMj() {
    return of(DoseFormula.PULSE_ENERGY);
  }

  /** J/cm2 on the axis of a Gaussian beam. */
  public Double peakFluence() {
    return of(DoseFormula.PEAK_FLUENCE);
  }
}

package club.emberwell.laser.safety;

import club.emberwell.laser.Regime;

/**
 * What of a laser could reach an eye.
 *
 * @param powerW average power, all of it
 * @param diameterMm of the beam where eyewear would meet it, mm; null = not known
 * @param pulses null where continuous, or where nobody said how it is pulsed
 */
public record EyeBeam(double nm, double powerW, Regime regime, Double diameterMm, Pulses pulses) {
  /** Upper limit of class 3B for a continuous beam, W: IEC 60825-1 (from memory). */
  public static final double CLASS_3B_W = 0.5;

  /** A train of equal pulses. */
  public record Pulses(double rateKhz, double durationNs) {}

  /** Whether one average power says too little of it. */
  public boolean pulsed() {
    return regime.pulsed();
  }

  /** Energy of one pulse, mJ. */
  double energyMj() {
    return powerW / pulses.rateKhz();
  }

  /** True where the open beam is above class 3B by its average power alone. */
  public boolean classFour() {
    return powerW > CLASS_3B_W;
  }
}

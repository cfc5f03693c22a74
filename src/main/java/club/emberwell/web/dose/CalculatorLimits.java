package club.emberwell.web.dose;

import club.emberwell.quantity.Bounds;

/** Bounds of the calculators of eyes and air, in one place; inclusive, far outside the usual. */
final class CalculatorLimits {
  static final Bounds WAVELENGTH_NM = new Bounds(150, 20_000);
  static final Bounds POWER_W = new Bounds(1e-9, 100_000);
  static final Bounds BEAM_MM = new Bounds(1e-4, 1000);
  static final Bounds FOCAL_MM = new Bounds(0.1, 10_000);
  static final Bounds RATE_KHZ = new Bounds(1e-6, 1e9);
  static final Bounds DURATION_NS = new Bounds(1e-6, 1e10);
  static final Bounds PERCENT = new Bounds(0.01, 100);
  static final Bounds FLOW_M3H = new Bounds(0.01, 1e6);
  static final Bounds DUCT_MM = new Bounds(1, 10_000);
  static final Bounds ROOM_MM = new Bounds(100, 1e6);
  static final Bounds REMOVED_PERCENT = new Bounds(1, 99.9999);

  private CalculatorLimits() {}
}

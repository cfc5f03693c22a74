package club.emberwell.bench;

import club.emberwell.quantity.Bounds;

/** Every limit of a machine, in one place. Bounds are inclusive and far outside the plausible. */
public final class MachineLimits {
  /** Machines one member may keep; deleted ones do not count. */
  public static final int PER_MEMBER = 50;

  public static final int NAME = 80;
  public static final int MODEL = 80;
  public static final int CONTROLLER_VERSION = 80;

  /** Models that are suggested, the usual ones first. */
  public static final int MODELS_SUGGESTED = 200;

  /** Pointers one entry may confirm, and the length of each. */
  public static final int CONFIRMED = 100;

  public static final int POINTER = 100;

  public static final Bounds WAVELENGTH_NM = new Bounds(150, 20_000);
  public static final Bounds RATED_POWER_W = new Bounds(0.001, 100_000);
  public static final Bounds LENS_MM = new Bounds(0.1, 10_000);
  public static final Bounds BEAM_DIAMETER_UM = new Bounds(0.1, 50_000);

  /** Before the lens. */
  public static final Bounds INPUT_BEAM_MM = new Bounds(0.1, 200);

  /** Full angle; narrower than any beam of a workshop, wider than any bare diode. */
  public static final Bounds DIVERGENCE_MRAD = new Bounds(0.01, 3000);

  public static final Bounds MAX_SPEED_MM_S = new Bounds(0.01, 1_000_000);

  private MachineLimits() {}
}

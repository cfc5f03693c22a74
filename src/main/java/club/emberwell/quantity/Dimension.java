package club.emberwell.quantity;

/** Which units go together: the dimension (VIM 1.7), which several kinds of quantity share. */
enum Dimension {
  SPEED,
  POWER,
  RATIO,
  LENGTH,
  /** Lengths, and lines or dots per length. */
  SPACING,
  FREQUENCY,
  TIME,
  AREAL_ENERGY,
  LINE_ENERGY,
  ENERGY,
  IRRADIANCE,
  FLOW;

  static Dimension of(QuantityKind kind) {
    return switch (kind) {
      case SPEED -> SPEED;
      case POWER, PEAK_POWER -> POWER;
      case POWER_PERCENT -> RATIO;
      case LINE_SPACING -> SPACING;
      case FOCUS_OFFSET, THICKNESS, FOCAL_LENGTH, WAVELENGTH, BEAM_DIAMETER -> LENGTH;
      case REPETITION_RATE -> FREQUENCY;
      case PULSE_DURATION, DURATION -> TIME;
      case AREAL_DOSE, FLUENCE -> AREAL_ENERGY;
      case LINE_DOSE -> LINE_ENERGY;
      case PULSE_ENERGY -> ENERGY;
      case IRRADIANCE -> IRRADIANCE;
      case AIR_FLOW -> FLOW;
    };
  }

  boolean isLength() {
    return this == LENGTH || this == SPACING;
  }
}

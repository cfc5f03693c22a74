package club.emberwell.laser.safety;

/**
 * A train of equal pulses as tables of limits count it.
 *
 * @param pulses how many there are, those that merge counted once; at least 1
 * @param merged how many pulses' energy one of them holds; at least 1
 */
record PulseTrain(double pulses, double merged) {
  /** Up to this many pulses C5 stays 1. */
  private static final double FEW = 600;

  private static final double LOWEST_C5 = 0.4;

  /**
   * @param mergingSeconds time within which pulses count as one, s
   */
  static PulseTrain of(double rateHz, double seconds, double mergingSeconds) {
    double merged = Math.max(1, rateHz * mergingSeconds);
    return new PulseTrain(Math.max(1, rateHz * seconds / merged), merged);
  }

  /** N^(1/4): how much more a train loads than one of its pulses. */
  double load() {
    return Math.pow(pulses, 0.25);
  }

  /** C_p = N^-0.25 of Directive 2006/25/EC, Annex II Table 2.6, rule 3. */
  double cp() {
    return 1 / load();
  }

  /**
   * C5 of IEC 60825-1:2014 for pulses shorter than T_i. From memory, as an open calculator has it
   * too; the standard was not read.
   */
  double c5(double seconds) {
    return seconds <= EyeLimits.AVERSION_SECONDS || pulses <= FEW
        ? 1
        : Math.max(LOWEST_C5, 5 / load());
  }
}

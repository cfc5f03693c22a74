package club.emberwell.laser.dose;

/** Why a computed dose is only nominal; printed next to the number. */
public enum Caveat {
  RATED(
      "Rated power is what the label says. Ageing, heat, mirrors and lenses lower it, and some diode labels state electrical power."),
  PERCENT(
      "Percent is rarely linear: CO2 glass tubes start late and follow a curve, RF tubes switch on and off (PWM), fibre lasers may switch their peak power."),
  SPEED(
      "At low acceleration the true speed stays below the set speed at line ends and on small"
          + " shapes."),
  RAMP("Some controllers lower the power with the speed at the ends of lines."),
  DUTY("With pulse-width modulation this is a mean: the peak irradiance is unchanged."),
  ABSORBED("What the work absorbs is (1 - R) times this; R is its reflectance."),
  CROSS_PASS("A cross-hatch fills the area a second time and counts as twice the passes."),
  THICKNESS("Cutting other thicknesses does not scale in a straight line with this number."),
  SQUARE("Taken for a square pulse; a Gaussian pulse peaks at 0.94 times, a sech² at 0.88 times."),
  Q_SWITCH("On a Q-switched source the pulse duration itself follows from the repetition rate."),
  FOCUS(
      "Uses the spot size at focus, as the owner gave it or as calculated from the lens; a focus"
          + " offset makes the spot larger."),
  GAUSSIAN("Taken for a Gaussian beam; a flat-topped beam peaks at half of it."),
  GAPS("Below zero there are gaps."),
  ONE_PASS("For one pass.");

  private final String sentence;

  Caveat(String sentence) {
    this.sentence = sentence;
  }

  public String sentence() {
    return sentence;
  }
}

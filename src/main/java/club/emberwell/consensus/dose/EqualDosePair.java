package club.emberwell.consensus.dose;

import java.util.List;

/**
 * Published pairs of tracks at one line dose, some of which agree and some of which do not: the
 * limits of carrying a dose over. Tracks melted into bare metal, not engraving.
 *
 * @param what the metal and the dose in J/mm
 * @param first settings of the one track
 * @param second settings of the other
 * @param firstDepthUm depth of the one track, um
 * @param secondDepthUm depth of the other, um
 * @param source where it is published
 */
public record EqualDosePair(
    String what,
    String first,
    String second,
    double firstDepthUm,
    double secondDepthUm,
    String source) {
  private static final String LEUVEN =
      "V. Coen, KU Leuven melt-pool set, CC0, Figshare 10.6084/m9.figshare.15035703.v1";
  private static final String LANE =
      "Lane et al., Integr. Mater. Manuf. Innov. 9(1) (2020), doi 10.1007/s40192-020-00169-1,"
          + " Tables 3 and 4; means of three tracks each";

  /** All pairs, those that agree first. */
  public static final List<EqualDosePair> ALL =
      List.of(
          leuven("0.25", 100, 400, 129.286, 200, 800, 128.429),
          leuven("0.2", 100, 500, 98.857, 200, 1000, 97.857),
          leuven("0.3333", 200, 600, 265.857, 300, 900, 305.0),
          leuven("1.0", 400, 400, 749.714, 600, 600, 895.286),
          leuven("0.5", 200, 400, 305.714, 400, 800, 454.571),
          new EqualDosePair(
              "nickel alloy IN625, 0.375 J/mm",
              "150 W, 400 mm/s, beam 170 µm",
              "150 W, 400 mm/s, beam 100 µm",
              42.5,
              151.527,
              LANE));

  /** What they show, in words. */
  public static final String MEANS =
      "Equal dose holds within 1 % in places and fails by half as much again on one machine where"
          + " the mechanism changes; another beam diameter makes it fail more than threefold.";

  private static EqualDosePair leuven(
      String dose, int p1, int v1, double depth1, int p2, int v2, double depth2) {
    return new EqualDosePair(
        "steel 316L, " + dose + " J/mm",
        p1 + " W, " + v1 + " mm/s",
        p2 + " W, " + v2 + " mm/s",
        depth1,
        depth2,
        LEUVEN);
  }

  /** Second depth over first. */
  public double ratio() {
    return secondDepthUm / firstDepthUm;
  }
}

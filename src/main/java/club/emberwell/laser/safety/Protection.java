package club.emberwell.laser.safety;

import club.emberwell.laser.safety.En207.Condition;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityPrinter;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What a pair of glasses claims for some wavelengths, as printed.
 *
 * @param fromNm first wavelength, nm
 * @param toNm last one, nm; the same for a single wavelength
 * @param opticalDensity null where a scale number is printed instead
 * @param conditions the letters of the scale number; empty beside an optical density
 * @param scaleNumber n of LBn, or null
 */
public record Protection(
    double fromNm,
    double toNm,
    Double opticalDensity,
    Set<Condition> conditions,
    Integer scaleNumber) {
  public Protection {
    conditions = Set.copyOf(conditions);
  }

  /** Both ends as printed count as covered. */
  public boolean covers(double nm) {
    return nm >= fromNm && nm <= toNm;
  }

  /** What it says of the light that is let through: LBn stands for an optical density above n. */
  public double density() {
    return opticalDensity == null ? scaleNumber : opticalDensity;
  }

  /** "D I R": the letters in their order. */
  public String letters() {
    return new TreeSet<>(conditions).stream().map(Condition::name).collect(Collectors.joining(" "));
  }

  /** "900 to 1070 nm: optical density 6" or "1064 nm: LB6 for D (continuous)". */
  public String sentence(NumberStyle style) {
    String where = QuantityPrinter.number(fromNm, style);
    if (toNm != fromNm) {
      where += " to " + QuantityPrinter.number(toNm, style);
    }
    String what =
        opticalDensity != null
            ? "optical density " + QuantityPrinter.number(opticalDensity, style)
            : "LB%d for %s"
                .formatted(
                    scaleNumber,
                    new TreeSet<>(conditions)
                        .stream()
                            .map(c -> c + " (" + c.label() + ")")
                            .collect(Collectors.joining(", ")));
    return where + " nm: " + what;
  }
}

package club.emberwell.catalog;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What counts as one thickness of a piece: those near a nominal thickness of {@code
 * shared/vocabulary/thicknesses.yaml}, and two open classes below and above them all. Neighbours
 * meet at their geometric mean; the outermost reach as far outwards as inwards.
 *
 * @param code its word in the API, e.g. {@code 3-mm}
 * @param label e.g. {@code 3 mm}
 * @param nominalMm null of an open class
 * @param fromMm belongs to it
 * @param toMm belongs to the next
 */
public record ThicknessClass(
    String code, String label, Double nominalMm, double fromMm, double toMm) {
  private static final MathContext DIGITS = new MathContext(2);
  private static final List<ThicknessClass> ALL = from(CatalogFiles.thicknesses());

  private static List<ThicknessClass> from(List<Double> nominal) {
    List<ThicknessClass> all = new ArrayList<>();
    int last = nominal.size() - 1;
    double from = meeting(nominal.get(1), nominal.get(0), -1);
    all.add(open("under", 0, from, from));
    for (int i = 0; i <= last; i++) {
      double to =
          i < last
              ? meeting(nominal.get(i), nominal.get(i + 1), 1)
              : meeting(nominal.get(last - 1), nominal.get(last), -1);
      String label = plain(nominal.get(i)) + " mm";
      all.add(new ThicknessClass(code(label), label, nominal.get(i), from, to));
      from = to;
    }
    all.add(open("over", from, Double.POSITIVE_INFINITY, from));
    return List.copyOf(all);
  }

  /** Half way from one to the next on the log scale, or as far beyond the next. */
  private static double meeting(double one, double next, int side) {
    double half = Math.sqrt(next / one);
    return side > 0 ? one * half : next * half;
  }

  private static ThicknessClass open(String side, double from, double to, double bound) {
    String label = side + " " + rounded(bound) + " mm";
    return new ThicknessClass(code(label), label, null, from, to);
  }

  private static String code(String label) {
    return label.replace(' ', '-');
  }

  /** All of them, thinnest first. */
  public static List<ThicknessClass> all() {
    return ALL;
  }

  /** The class of a thickness; empty where it is no positive number. */
  public static Optional<ThicknessClass> of(double mm) {
    return mm > 0 ? ALL.stream().filter(one -> mm < one.toMm).findFirst() : Optional.empty();
  }

  /** False where it is likelier the length or the width of the piece. */
  public static boolean isUsual(double mm) {
    return of(mm).filter(one -> one.toMm < Double.POSITIVE_INFINITY).isPresent();
  }

  /** The class with this code, in any case, with blanks for dashes too; empty if none. */
  public static Optional<ThicknessClass> of(String code) {
    String plain = code(code.strip().toLowerCase(Locale.ROOT));
    return ALL.stream().filter(one -> one.code.equals(plain)).findFirst();
  }

  /** What it takes in, e.g. {@code 2.4 to 3.5 mm}. */
  public String covers() {
    return nominalMm == null ? label : rounded(fromMm) + " to " + rounded(toMm) + " mm";
  }

  private static String rounded(double mm) {
    return plain(new BigDecimal(mm).round(DIGITS).doubleValue());
  }

  private static String plain(double mm) {
    return BigDecimal.valueOf(mm).stripTrailingZeros().toPlainString();
  }
}

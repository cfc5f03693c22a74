package club.emberwell.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.regex.Pattern;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import javax.measure.format.UnitFormat;
import org.hipparchus.fraction.BigFraction;
import systems.uom.ucum.format.UCUMFormat;
import tech.units.indriya.function.RationalNumber;

/**
 * UCUM codes to exact factors, by the UCUM parser of systems-ucum on Indriya's rational converters.
 * Whatever that parser throws (it throws errors, too) comes out here as an empty answer.
 */
final class UcumCodes {
  // Only atoms with an exact factor and a sense here: no levels, becquerels, typographic lines. An
  // annotation is let through only where lines are counted.
  private static final String ATOM =
      "(?:(?:da|[fpnumcdhkMG])?(?:m|s|W|J|Hz|L|l)|min|h|\\[(?:in|ft|yd|mil|cft)_i]|\\[in_us])";
  private static final String TERM = ATOM + "-?[1-3]?";
  private static final String COUNT = "(?:\\{(?:lines?|dots?)})";
  private static final Pattern KNOWN = Pattern.compile("(?:" + TERM + "(?:[./]" + TERM + "){0,3})");
  private static final Pattern KNOWN_COUNT =
      Pattern.compile(COUNT + "?/" + ATOM + "|" + COUNT + "\\." + ATOM + "-1|" + ATOM + "-1");

  private static final UnitFormat FORMAT = format();
  private static final ConcurrentMap<String, Conversion> TABLED = new ConcurrentHashMap<>();

  private UcumCodes() {}

  // Indriya looks for its parts where the running thread says; a pool's thread may say elsewhere.
  private static UnitFormat format() {
    Thread thread = Thread.currentThread();
    ClassLoader before = thread.getContextClassLoader();
    thread.setContextClassLoader(UcumCodes.class.getClassLoader());
    try {
      return UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE);
    } finally {
      thread.setContextClassLoader(before);
    }
  }

  /** The conversion of a code that {@link UnitTable} lists: parsed once. */
  static Conversion tabled(String code, QuantityKind kind) {
    return TABLED.computeIfAbsent(
        kind + " " + code,
        key ->
            conversion(code, kind)
                .orElseThrow(() -> new IllegalStateException("no unit of " + key)));
  }

  /** Empty unless {@code code} is a unit of the kind with an exact factor. */
  static Optional<Conversion> conversion(String code, QuantityKind kind) {
    if (code.length() > QuantityLimits.UNIT_CODE) {
      return Optional.empty();
    }
    String canonical = kind.canonicalUnit();
    Optional<Pattern> own = kind.dimension().ownCodes();
    if (own.isPresent()) {
      return own.get().matcher(code).matches() ? factor(code, canonical, false) : Optional.empty();
    }
    if (kind.dimension() == Dimension.SPACING && KNOWN_COUNT.matcher(code).matches()) {
      return factor(code, "/" + canonical, true);
    }
    return isKnown(code) ? factor(code, canonical, false) : Optional.empty();
  }

  /** Whether the code is one we know at all, of whatever dimension. */
  static boolean isKnown(String code) {
    return KNOWN.matcher(code).matches();
  }

  private static Optional<Conversion> factor(String code, String canonical, boolean reciprocal) {
    Optional<Unit<?>> from = parse(code);
    Optional<Unit<?>> to = parse(canonical);
    if (from.isEmpty() || to.isEmpty() || !from.get().isCompatible(to.get())) {
      return Optional.empty();
    }
    try {
      UnitConverter converter = from.get().getConverterToAny(to.get());
      return exact(converter.convert((Number) 1)).map(f -> new Conversion(f, reciprocal));
    } catch (RuntimeException | javax.measure.IncommensurableException e) {
      return Optional.empty();
    }
  }

  private static Optional<Unit<?>> parse(String code) {
    try {
      return Optional.ofNullable(FORMAT.parse(code));
    } catch (RuntimeException | Error e) {
      if (e instanceof VirtualMachineError error) {
        throw error;
      }
      return Optional.empty();
    }
  }

  private static Optional<BigFraction> exact(Number factor) {
    if (factor instanceof RationalNumber r) {
      return Optional.of(new BigFraction(r.getDividend(), r.getDivisor()));
    }
    if (factor instanceof BigDecimal d) {
      return Optional.of(ExactNumbers.fraction(d));
    }
    if (factor instanceof BigInteger || factor instanceof Long || factor instanceof Integer) {
      return Optional.of(new BigFraction(new BigInteger(factor.toString())));
    }
    return Optional.empty();
  }
}

package club.emberwell.web.range;

import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import java.util.Arrays;

/** Values of a measure in the reader's unit. */
record MeasureText(Measure measure, UnitPreferences reader) {

  /** The number alone, for axes and tables. */
  String number(double canonical) {
    return QuantityPrinter.number(value(canonical), reader.style());
  }

  /** The number with its unit, for sentences. */
  String text(double canonical) {
    return measure
        .dimension()
        .map(d -> QuantityPrinter.print(canonical, d, reader))
        .orElseGet(() -> number(canonical));
  }

  double value(double canonical) {
    return measure
        .dimension()
        .map(d -> QuantityPrinter.value(canonical, d, reader))
        .orElse(canonical);
  }

  /** A number that already is in the reader's unit. */
  String tick(double inReadersUnit) {
    return QuantityPrinter.number(inReadersUnit, reader.style());
  }

  double[] values(double[] canonical) {
    return Arrays.stream(canonical).map(this::value).toArray();
  }

  /** Both ends in the reader's unit, smaller first: more lines per inch is less spacing. */
  double[] ends(double low, double high) {
    double a = value(low);
    double b = value(high);
    return new double[] {Math.min(a, b), Math.max(a, b)};
  }

  String unit() {
    return measure.dimension().map(d -> QuantityPrinter.unitLabel(d, reader)).orElse("");
  }
}

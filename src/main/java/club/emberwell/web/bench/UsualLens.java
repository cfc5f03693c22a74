package club.emberwell.web.bench;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.dose.FocusedSpot;
import club.emberwell.laser.dose.FocusedSpot.Lens;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.WrittenQuantity;
import java.util.List;
import java.util.stream.Stream;

/**
 * A lens that machines of a kind often have, with the spot size that follows: chosen by one tap by
 * whoever knows no more than what is printed on the lens.
 */
record UsualLens(LaserSource source, Lens lens) {
  /** Name of the field in which one is chosen; empty = what is typed counts. */
  static final String FIELD = "usualLens";

  private static final double MM_PER_INCH = 25.4;

  /** Only the lenses sold in inches have a round number of these. */
  private static final double ROUND = 0.5;

  static List<UsualLens> all() {
    return Stream.of(LaserSource.values()).flatMap(UsualLens::of).toList();
  }

  private static Stream<UsualLens> of(LaserSource source) {
    return FocusedSpot.usual(source).stream().map(lens -> new UsualLens(source, lens));
  }

  /** "co2/50.8/5". */
  String code() {
    return source.code() + "/" + number(lens.focalMm()) + "/" + number(lens.inputMm());
  }

  /** "50.8 mm (2 in) lens, 5 mm beam: 151 µm, calculated". */
  String label() {
    return "%s lens, %s mm beam: %.0f µm, calculated"
        .formatted(
            focal(),
            number(lens.inputMm()),
            FocusedSpot.um(source, source.usualNm(), lens).orElseThrow());
  }

  private String focal() {
    double inches = lens.focalMm() / MM_PER_INCH;
    String mm = number(lens.focalMm()) + " mm";
    boolean round = Math.abs(inches / ROUND - Math.rint(inches / ROUND)) < 1e-9;
    return source == LaserSource.CO2 && round ? mm + " (" + number(inches) + " in)" : mm;
  }

  private static String number(double value) {
    return QuantityPrinter.number(value, NumberStyle.ANY);
  }

  /** The laser with the lens and the beam that were chosen in place of what was typed of them. */
  static WrittenLaser chosen(WrittenLaser typed, String code) {
    return all().stream()
        .filter(one -> one.code().equals(code))
        .filter(one -> one.source().code().equals(typed.source()))
        .findFirst()
        .map(
            one ->
                new WrittenLaser(
                    typed.source(),
                    typed.wavelength(),
                    typed.ratedPower(),
                    typed.motion(),
                    typed.regime(),
                    WrittenQuantity.of(number(one.lens().focalMm()) + " mm"),
                    typed.beamDiameter(),
                    WrittenQuantity.of(number(one.lens().inputMm()) + " mm")))
        .orElse(typed);
  }
}

package club.emberwell.laser;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.dose.Dose;
import club.emberwell.laser.dose.Transfer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where equal dose holds and where it fails, on published single tracks. These are tracks melted
 * into bare metal (additive manufacturing), NOT engraving: they show the limits of dose as a
 * measure, not settings.
 *
 * <p>Lane et al., Integr. Mater. Manuf. Innov. 9(1) (2020), doi 10.1007/s40192-020-00169-1, Tables
 * 3 and 4 (IN625; read through a transcription); KU Leuven melt-pool set, V. Coen, CC0, Figshare
 * 10.6084/m9.figshare.15035703.v1 (316L) and 15035712.v2 (Ti-6Al-4V).
 */
class PublishedTracksTest {
  private static final String LANE = "/reference/datasets/lane2020_in625_tracks.csv";
  private static final String LEUVEN = "/reference/datasets/kuleuven_316l_ti64_conditions.csv";

  private static Laser fibre(double ratedW, Double spotUm) {
    return new Laser(
        LaserSource.FIBRE, 1070, ratedW, Motion.GALVO, Emission.of(Regime.CW), null, spotUm, null);
  }

  private static double lineDose(double watts, double speed) {
    return Dose.derive(fibre(1000, null), Process.SCORE, Trials.watts(watts, speed, null, 1))
        .lineDose();
  }

  private static void assertLineDose(String watts, String speed) {
    BigDecimal exact = new BigDecimal(watts).divide(new BigDecimal(speed), MathContext.DECIMAL64);
    double computed = lineDose(Double.parseDouble(watts), Double.parseDouble(speed));
    assertEquals(exact.doubleValue(), computed, 1e-12 * computed);
  }

  @ParameterizedTest
  @CsvFileSource(resources = LANE, numLinesToSkip = 1)
  void lineDoseOfEveryIn625Track(
      String machine, int track, String letter, String power, String nominal, String speed) {
    assertLineDose(power, speed);
    assertLineDose(nominal, speed);
  }

  @ParameterizedTest
  @CsvFileSource(resources = LEUVEN, numLinesToSkip = 1)
  void lineDoseOfEveryLeuvenCondition(String alloy, String power, String speed) {
    assertLineDose(power, speed);
  }

  /** Calibrated against nominal power of the one machine: about 8 % less, never explained. */
  @ParameterizedTest
  @CsvSource({"137.9, 150, 0.9193", "179.2, 195, 0.9190"})
  void nominalPowerWasEightPercentHigh(double calibrated, double nominal, String ratio) {
    assertPrinted(ratio, calibrated / nominal);
    assertPrinted(ratio, lineDose(calibrated, 400) / lineDose(nominal, 400));
  }

  @ParameterizedTest
  @CsvSource({
    "0.25, 100, 400, 200, 800, -0.7", // 129.286 and 128.429 um deep: agree
    "0.2, 100, 500, 200, 1000, -1.0", // agree
    "0.3333, 200, 600, 300, 900, 14.7",
    "0.5, 200, 400, 400, 800, 48.7", // the regime shifts: equal dose, half as deep again
    "0.5, 200, 400, 300, 600, 45.6",
    "1.0, 400, 400, 600, 600, 19.4",
  })
  void equalLineDoseAgreesInPlacesAndFailsInOthers(
      String dose, double p1, double v1, double p2, double v2, String percentDeeper) {
    assertPrinted(dose, lineDose(p1, v1));
    assertPrinted(dose, lineDose(p2, v2));
    assertPrinted(percentDeeper, (depth316(p2, v2) / depth316(p1, v1) - 1) * 100);
  }

  /** 150 W, 400 mm/s on two machines: 151.5 um deep with a 100 um spot, 42.5 um with 170 um. */
  @Test
  void theSameNominalSettingOnAnotherSpotIsRefusedANumber() {
    double narrow = mean("CBM", 9);
    double wide = mean("AMMT", 9);
    assertPrinted("3.57", narrow / wide);
    assertPrinted("1.16", mean("CBM", 7) / mean("AMMT", 7));
    assertPrinted("0.375", lineDose(150, 400));
    Settings used = Trials.watts(150, 400, null, 1);
    Transfer.Outcome outcome =
        Transfer.judge(
            new Transfer.Question(
                fibre(400, 100.0), used, fibre(400, 170.0), used, Process.SCORE, true, true));
    assertEquals(Transfer.Verdict.SHOW_SIDE_BY_SIDE, outcome.verdict());
    assertNull(outcome.speedMmS());
    assertTrue(outcome.reasons().get(0).contains("the same dose does not do the same"));
  }

  private static double mean(String machine, int column) {
    return Csv.rows(LANE).stream()
        .filter(row -> row.get(0).equals(machine) && row.get(2).equals("A"))
        .mapToDouble(row -> Double.parseDouble(row.get(column)))
        .average()
        .orElseThrow();
  }

  private static double depth316(double watts, double speed) {
    return Csv.rows(LEUVEN).stream()
        .filter(row -> row.get(0).equals("316L"))
        .filter(row -> Double.parseDouble(row.get(1)) == watts)
        .filter(row -> Double.parseDouble(row.get(2)) == speed)
        .mapToDouble(row -> Double.parseDouble(row.get(4)))
        .findFirst()
        .orElseThrow();
  }

  /** The files have neither quotes nor comments. */
  private static final class Csv {
    static List<List<String>> rows(String resource) {
      try (var in = PublishedTracksTest.class.getResourceAsStream(resource)) {
        return new String(in.readAllBytes(), StandardCharsets.UTF_8)
            .lines()
            .skip(1)
            .map(line -> List.of(line.split(",")))
            .toList();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}

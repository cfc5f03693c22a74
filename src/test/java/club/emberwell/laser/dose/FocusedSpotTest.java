package club.emberwell.laser.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.LaserSource;
import club.emberwell.laser.dose.FocusedSpot.Lens;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FocusedSpotTest {
  @ParameterizedTest
  @CsvSource({
    "1.1, 10600, 38.1, 5, 113.126",
    "1.1, 10600, 50.8, 5, 150.835",
    "1.1, 10600, 101.6, 5, 301.670",
    "1.5, 1064, 100, 7, 29.030",
    "1.5, 1064, 160, 7, 46.448",
    "1.5, 1064, 254, 7, 73.736",
    "1.2, 355, 160, 10, 8.678",
  })
  void theSpotFollowsFromLensAndBeam(double m2, double nm, double focal, double input, double um) {
    assertEquals(um, FocusedSpot.um(m2, nm, new Lens(focal, input)), 0.001);
  }

  @Test
  void nothingIsCalculatedForADiode() {
    assertTrue(FocusedSpot.um(LaserSource.DIODE, 455, new Lens(50, 5)).isEmpty());
    assertTrue(FocusedSpot.usual(LaserSource.DIODE).isEmpty());
  }
}

package club.emberwell.laser;

import static club.emberwell.laser.Printed.assertPrinted;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ISO 11146-1 with a thin lens; Siegman, Lasers (1986) (from memory); values computed from it. */
class SpotTest {
  @ParameterizedTest
  @CsvSource({
    "10600, 1.1, 5, 38.1, 113.126, 0.8620, 1.724",
    "10600, 1.1, 5, 50.8, 150.835, 1.5325, 3.065",
    "10600, 1.1, 5, 101.6, 301.670, 6.130, 12.260",
    "1064, 1.5, 7, 100, 29.030, 0.4147, 0.829",
    "1064, 1.5, 7, 160, 46.448, 1.0617, 2.123",
    "1064, 1.5, 7, 254, 73.736, 2.6756, 5.351",
    "355, 1.2, 10, 160, 8.678, 0.1389, 0.2777",
  })
  void focusAndDepthBehindALens(
      double nm, double ratio, double beam, double focal, String spot, String zr, String dof) {
    Spot focused = Spot.focused(ratio, nm, focal, beam);
    assertPrinted(spot, focused.diameterUm());
    assertPrinted(zr, focused.rayleighMm());
    assertPrinted(dof, focused.depthOfFocusMm());
  }

  @ParameterizedTest
  @CsvSource({"1, 180.108, 1.42580", "2, 247.995, 2.70321", "-3, 331.570, 4.83222"})
  void theBeamWidensEitherWayFromFocus(double offset, String diameter, String growth) {
    Spot co2 = Spot.focused(1.1, 10600, 50.8, 5);
    assertPrinted(diameter, co2.diameterAtUm(offset));
    assertPrinted(growth, co2.areaGrowth(offset));
  }

  @Test
  void aLongerScanLensWidensTheSpotAndThinsTheFluence() {
    Spot near = Spot.focused(1.5, 1064, 160, 7);
    Spot far = Spot.focused(1.5, 1064, 254, 7);
    assertPrinted("1.5875", far.diameterUm() / near.diameterUm());
    assertPrinted("2.52016", far.rayleighMm() / near.rayleighMm());
    assertPrinted(
        "2.52016",
        Pulse.peakFluence(1, near.diameterUm()) / Pulse.peakFluence(1, far.diameterUm()));
    assertPrinted("16.0", Spot.scanPositionMm(160, 0.1));
    assertPrinted("112.0", Spot.fieldSideMm(160, 0.35));
  }
}

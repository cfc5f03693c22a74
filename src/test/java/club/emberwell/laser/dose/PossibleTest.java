package club.emberwell.laser.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.quantity.QuantityKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PossibleTest {
  private static final Laser SMALL =
      new Laser(
          LaserSource.DIODE,
          455,
          10,
          Motion.GANTRY,
          new Emission(Regime.CW, false),
          null,
          null,
          null);

  @ParameterizedTest
  @CsvSource({
    "POWER, POWER, 60000, false, false",
    "POWER, POWER, 60, false, true",
    "POWER, POWER, 6000, false, true",
    "POWER, POWER, 6001, false, false",
    "POWER, POWER, 0.06, false, false",
    "POWER, POWER, 0.49, true, false",
    "POWER, POWER, 0.5, true, true",
    "POWER, POWER, 8, true, true",
    "POWER, POWER_PERCENT, 0.6, false, false",
    "POWER, POWER_PERCENT, 101, false, false",
    "POWER, POWER_PERCENT, 60, true, true",
    "SPEED, SPEED, 15240, false, false",
    "SPEED, SPEED, 3000, false, true",
    "SPEED, SPEED, 600, true, true",
    "LINE_SPACING, LINE_SPACING, 254, false, false",
    "LINE_SPACING, LINE_SPACING, 0.1, true, true",
  })
  void whatALaserCanBeTold(
      Setting setting, QuantityKind kind, double number, boolean onSmall, boolean onAny) {
    assertEquals(onSmall, Possible.on(SMALL, setting, new Amount(kind, number)));
    assertEquals(onAny, Possible.on(null, setting, new Amount(kind, number)));
  }
}

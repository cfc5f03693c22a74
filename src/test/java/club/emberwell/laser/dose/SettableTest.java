package club.emberwell.laser.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettableTest {
  // by hand: 1 in/s = 25.4 mm/s; 22 / 25.4 = 0.8661, 500 / 25.4 = 19.685, 505 / 25.4 = 19.882
  @ParameterizedTest
  @CsvSource({
    "22, , mm/s, 22 mm/s",
    "22, , [in_i]/s, 0.86 in/s",
    "304.8, , [in_i]/s, 12 in/s",
    "500, , [in_i]/s, 19.5 in/s",
    "22, , mm/min, 1320 mm/min",
    "505, 510, [in_i]/s, 20 in/s",
    "505, 505, [in_i]/s, 19.5 in/s",
  })
  void aComputedSpeedHasFewFiguresInTheReadersUnitAndPassesNoLimit(
      double speed, Double top, String unit, String shown) {
    UnitPreferences reader = UnitPreferences.metric().with(QuantityKind.SPEED, unit);
    Settings computed = Settings.NONE.with(Setting.SPEED, speed);
    Settings set = Settable.of(computed, 2, top, reader).settings();
    assertEquals(shown, QuantityPrinter.print(set.speedMmS(), QuantityKind.SPEED, reader));
  }

  @Test
  void theDoseGoesWithTheSpeedAndNeitherMovesFar() {
    UnitPreferences reader = UnitPreferences.metric().with(QuantityKind.SPEED, "[in_i]/s");
    Random random = new Random(254);
    for (int i = 0; i < 1000; i++) {
      double speed = Math.pow(10, random.nextDouble() * 4 - 1);
      Settable set = Settable.of(Settings.NONE.with(Setting.SPEED, speed), 2, null, reader);
      assertEquals(2 * speed, set.dose() * set.settings().speedMmS(), 1e-9 * speed);
      assertTrue(Math.abs(set.settings().speedMmS() / speed - 1) <= 0.0251, "" + speed);
    }
  }

  @Test
  void settingsWithoutASpeedStayAsTheyAre() {
    assertEquals(
        new Settable(Settings.NONE, 2),
        Settable.of(Settings.NONE, 2, null, UnitPreferences.metric()));
  }
}

package club.emberwell.laser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.quantity.QuantityKind;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The values of a trial over the catalogue of settings, and the words of the trade. */
class SettingsTest {
  private static final Settings ALL =
      Settings.ofWatts(40.0)
          .with(Setting.SPEED, 400)
          .with(Setting.PASSES, 2)
          .with(Setting.AIR_ASSIST, false)
          .with(Setting.DIRECTION, "two-way");

  @Test
  void whatIsKeptByCodesComesBack() {
    assertEquals(
        Map.of(
            "powerW",
            40.0,
            "speed",
            400.0,
            "passes",
            2,
            "airAssist",
            false,
            "direction",
            "two-way"),
        ALL.byCode());
    assertEquals(ALL, Settings.ofCodes(ALL.byCode()));
    Settings percent = Settings.ofCodes(Map.of("powerPercent", 45, "halo", 1));
    assertEquals(new Amount(QuantityKind.POWER_PERCENT, 45), percent.amount(Setting.POWER));
    assertEquals(Map.of("powerPercent", 45.0), percent.byCode());
  }

  @Test
  void oneSetOfSettingsFillsTheGapsOfAnother() {
    Settings filled = Settings.NONE.with(Setting.SPEED, 10).or(ALL);
    assertEquals(10, filled.number(Setting.SPEED));
    assertEquals(40, filled.number(Setting.POWER));
    assertEquals(2, filled.number(Setting.PASSES));
  }

  @Test
  void aNumberOfPassesIsWhole() {
    assertEquals(3, Settings.NONE.withNumber(Setting.PASSES, 2.6).values().get(Setting.PASSES));
    assertEquals(2.6, Settings.NONE.withNumber(Setting.SPEED, 2.6).number(Setting.SPEED));
    assertNull(ALL.withNumber(Setting.PASSES, null).number(Setting.PASSES));
    assertNull(ALL.withNumber(Setting.SPEED, null).number(Setting.SPEED));
  }

  @ParameterizedTest
  @CsvSource({"-1, ", "0, true", "1, false", "2, "})
  void aFlagHasTwoPlaces(int place, Boolean air) {
    Settings set = ALL.atPlace(Setting.AIR_ASSIST, place);
    assertEquals(air, set.values().get(Setting.AIR_ASSIST));
    assertEquals(air == null ? null : (Object) place, set.place(Setting.AIR_ASSIST));
  }

  @Test
  void aChoiceIsFoundAtItsPlace() {
    assertEquals(1, ALL.place(Setting.DIRECTION));
    assertEquals("one-way", ALL.atPlace(Setting.DIRECTION, 0).values().get(Setting.DIRECTION));
  }

  @Test
  void theFormAsksFirstForWhatEverybodySets() {
    assertEquals(
        List.of(Setting.POWER, Setting.SPEED, Setting.LINE_SPACING, Setting.PASSES),
        Setting.of(SettingForm.Group.MAIN));
    assertEquals(Setting.values().length - 6, Setting.of(SettingForm.Group.MORE).size());
    assertEquals("Direction of the lines", Setting.DIRECTION.question());
    assertEquals("Passes", Setting.PASSES.question());
    assertEquals(
        "0.1 mm, 254 dpi; also called interval, hatch or DPI; for area work only",
        Setting.LINE_SPACING.form().hint());
    assertEquals("45 % or 9 W", Setting.POWER.form().hint());
    assertEquals(Optional.of(Setting.LINE_SPACING), Setting.of("lineSpacing"));
    assertEquals(Optional.empty(), Setting.of("line-spacing"));
  }

  @ParameterizedTest
  @EnumSource(Setting.class)
  void whatCanBeComparedIsANumber(Setting setting) {
    boolean compared =
        !List.of(Setting.AIR_ASSIST, Setting.DIRECTION, Setting.CROSS_PASS).contains(setting);
    assertEquals(compared, setting.value().isNumber());
    assertEquals(compared, setting.value().choices().isEmpty());
  }

  private static Stream<List<String>> labels() {
    return Stream.of(
        Arrays.stream(Setting.values()).map(Setting::label).toList(),
        Arrays.stream(Direction.values()).map(Direction::label).toList(),
        Arrays.stream(Effect.values()).map(Effect::label).toList(),
        Arrays.stream(LaserSource.values()).map(LaserSource::label).toList(),
        Arrays.stream(Motion.values()).map(Motion::label).toList(),
        Arrays.stream(PowerClass.values()).map(PowerClass::label).toList(),
        Arrays.stream(Process.values()).map(Process::label).toList(),
        Arrays.stream(Regime.values()).map(Regime::label).toList(),
        Arrays.stream(WavelengthBand.values()).map(WavelengthBand::label).toList());
  }

  @Test
  void everyLabelIsThereAndToldFromTheOthers() {
    labels()
        .forEach(
            labels -> {
              assertTrue(labels.stream().noneMatch(String::isBlank), labels::toString);
              assertEquals(labels.size(), new HashSet<>(labels).size(), labels::toString);
            });
  }

  @Test
  void aBareWordIsFoundHoweverItIsJoined() {
    List<String> words = List.of("one-way", "two-way");
    assertEquals(Optional.of("two-way"), Codes.find(words, " Two_Way "));
    assertEquals(Optional.of("two-way"), Codes.find(words, "two  way"));
    assertEquals(Optional.empty(), Codes.find(words, "way"));
    assertEquals(Optional.empty(), Codes.find(words, null));
  }

  @ParameterizedTest
  @CsvSource({
    "340, UV_355",
    "339.9, OTHER",
    "370, UV_355",
    "370.1, OTHER",
    "395, BLUE",
    "470, BLUE",
    "510, GREEN_532",
    "550, GREEN_532",
    "900, NEAR_INFRARED",
    "1100, NEAR_INFRARED",
    "1100.1, OTHER",
    "9000, CO2_10600",
    "11000, CO2_10600",
    "11001, OTHER",
  })
  void bothEndsOfABandBelongToIt(double nm, WavelengthBand band) {
    assertEquals(band, WavelengthBand.of(nm));
  }

  @ParameterizedTest
  @CsvSource({"8999, false", "9000, true", "11000, true", "11001, false"})
  void bothEndsOfWhatASourceEmitsAreUsual(double nm, boolean usual) {
    assertEquals(usual, LaserSource.CO2.plausible(nm).isEmpty());
  }
}

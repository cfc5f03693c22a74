package club.emberwell.laser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VocabularyTest {
  @Test
  void everyCodeFindsItsValueAgain() {
    for (LaserSource value : LaserSource.values()) {
      assertEquals(Optional.of(value), LaserSource.of(value.code()));
    }
    for (Process value : Process.values()) {
      assertEquals(Optional.of(value), Process.of(value.code()));
    }
    for (Regime value : Regime.values()) {
      assertEquals(Optional.of(value), Regime.of(value.code()));
    }
    for (PowerClass value : PowerClass.values()) {
      assertEquals(Optional.of(value), PowerClass.of(value.code()));
    }
    for (WavelengthBand value : WavelengthBand.values()) {
      assertEquals(Optional.of(value), WavelengthBand.of(value.code()));
    }
  }

  @Test
  void spacesCaseAndUnderscoresDoNotMatter() {
    assertEquals(Optional.of(Process.SURFACE_ENGRAVING), Process.of("surface engraving"));
    assertEquals(Optional.of(Process.SURFACE_ENGRAVING), Process.of(" Surface_Engraving "));
    assertEquals(Optional.of(Effect.TOO_LITTLE), Effect.of("too little"));
    assertEquals(Optional.of(Direction.TWO_WAY), Direction.of("two way"));
    assertEquals(Optional.of(LaserSource.CO2), LaserSource.of("CO₂"));
    assertEquals(Optional.of(Motion.GALVO), Motion.of("GALVO"));
  }

  @Test
  void unknownWordsFindNothing() {
    assertEquals(Optional.empty(), LaserSource.of("maser"));
    assertEquals(Optional.empty(), Process.of(""));
    assertEquals(Optional.empty(), Effect.of(null));
  }

  // Bounds of the letters D, I, R, M of EN 207:2017 (read in encyclopaedia mirrors)
  @ParameterizedTest
  @CsvSource({
    "250000001, CW",
    "250000000, LONG",
    "1001, LONG",
    "1000, NS",
    "200, NS",
    "1, NS",
    "0.999, PS",
    "0.01, PS",
    "0.0099, FS",
    "0.00015, FS"
  })
  void pulseDurationDecidesTheRegime(double ns, Regime regime) {
    assertEquals(regime, Regime.ofPulseDuration(ns));
  }

  @Test
  void aPulseOfNoDurationHasNoRegime() {
    assertThrows(IllegalArgumentException.class, () -> Regime.ofPulseDuration(0));
    assertThrows(IllegalArgumentException.class, () -> Regime.ofPulseDuration(Double.NaN));
  }

  @ParameterizedTest
  @CsvSource({
    "4.99, UNDER_5",
    "5, FROM_5",
    "10, FROM_10",
    "20, FROM_20",
    "39.9, FROM_20",
    "40, FROM_40",
    "80, FROM_80",
    "6000, FROM_80"
  })
  void ratedPowerFallsIntoAClass(double watts, PowerClass expected) {
    assertEquals(expected, PowerClass.ofRated(watts));
  }

  @Test
  void aSourceThatDoesNotEmitThereIsRemarkedOn() {
    assertEquals(Optional.empty(), LaserSource.CO2.plausible(10600));
    assertEquals(Optional.empty(), LaserSource.DIODE.plausible(455));
    assertEquals(
        "A co2 laser usually has 9000 to 11000 nm. You gave 1064 nm.",
        LaserSource.CO2.plausible(1064).orElseThrow().detail());
    assertEquals("wavelength-unlike-source", LaserSource.FIBRE.plausible(450).orElseThrow().id());
  }
}

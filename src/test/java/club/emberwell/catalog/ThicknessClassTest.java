package club.emberwell.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThicknessClassTest {
  @ParameterizedTest
  @CsvSource({
    "3, 3-mm, 3 mm, 2.4 to 3.5 mm",
    "2.44, 2-mm, 2 mm, 1.7 to 2.4 mm",
    "2.45, 3-mm, 3 mm, 2.4 to 3.5 mm",
    "0.45, 0.5-mm, 0.5 mm, 0.4 to 0.63 mm",
    "0.39, under-0.4-mm, under 0.4 mm, under 0.4 mm",
    "27.9, 25-mm, 25 mm, 22 to 28 mm",
    "28, over-28-mm, over 28 mm, over 28 mm"
  })
  void aThicknessBelongsToTheNearestNominalOne(
      double mm, String code, String label, String covers) {
    ThicknessClass found = ThicknessClass.of(mm).orElseThrow();
    assertEquals(
        List.of(code, label, covers), List.of(found.code(), found.label(), found.covers()));
  }

  @ParameterizedTest
  @CsvSource({"1, 16, 1.5", "1, 8, 3", "1, 4, 6", "3, 8, 10", "1, 2, 12"})
  void inchesFallIntoTheClassTheyAreSoldBeside(double number, double part, double nominal) {
    assertEquals(nominal, ThicknessClass.of(25.4 * number / part).orElseThrow().nominalMm());
  }

  @Test
  void classesFollowEachOtherWithoutGapFromNothingToEverything() {
    double reached = 0;
    for (ThicknessClass one : ThicknessClass.all()) {
      assertEquals(reached, one.fromMm());
      assertTrue(one.toMm() > one.fromMm());
      reached = one.toMm();
    }
    assertEquals(Double.POSITIVE_INFINITY, reached);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -3, Double.NaN})
  void whatIsNoThicknessHasNoClass(double mm) {
    assertEquals(Optional.empty(), ThicknessClass.of(mm));
  }

  @Test
  void aClassIsFoundByItsCodeOrItsLabel() {
    ThicknessClass three = ThicknessClass.of(3).orElseThrow();
    assertEquals(Optional.of(three), ThicknessClass.of("3-mm"));
    assertEquals(Optional.of(three), ThicknessClass.of("3 MM"));
    assertEquals(Optional.empty(), ThicknessClass.of("3.1 mm"));
  }
}

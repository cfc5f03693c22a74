package club.emberwell.grid.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each kind of bad corners gets its own sentence. */
class CornersTest {
  private static final PhotoPlan PLAN = new PhotoPlan(5, 6, 8, 1);

  private static String fault(Corners corners) {
    return corners.fault(1200, 900, PLAN);
  }

  @Test
  void theCornersOneBeginsWithAreFine() {
    assertNull(fault(Corners.START));
  }

  @Test
  void aMissingCornerIsAskedFor() {
    Corners three = new Corners(new Spot(0, 0), new Spot(1, 0), null, new Spot(0, 1));
    assertEquals("Mark all four corners of the grid.", fault(three));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          outside | 0.1 0.1 1.2 0.1 0.9 0.9 0.1 0.9 | All four corners must be inside the photo. Take it from farther away.
          no number | NaN 0.1 0.9 0.1 0.9 0.9 0.1 0.9 | All four corners must be inside the photo. Take it from farther away.
          crossed | 0.1 0.1 0.9 0.9 0.9 0.1 0.1 0.9 | The lines between the corners cross or bend inwards. Put each corner in its place.
          bent inwards | 0.1 0.1 0.9 0.1 0.3 0.3 0.1 0.9 | The lines between the corners cross or bend inwards. Put each corner in its place.
          three in a row | 0.1 0.1 0.5 0.1 0.9 0.1 0.1 0.9 | Three corners are on one line. Move them apart.
          mirrored | 0.9 0.1 0.1 0.1 0.1 0.9 0.9 0.9 | The corners run the wrong way round. Start at the top left and go clockwise.
          all at one spot | 0.5 0.5 0.5 0.5 0.5 0.5 0.5 0.5 | The corners are too close together. A test needs at least 6 pixels of the photo.
          too small | 0.5 0.5 0.52 0.5 0.52 0.52 0.5 0.52 | The corners are too close together. A test needs at least 6 pixels of the photo.
          """)
  void badCornersAreRefused(String what, String places, String sentence) {
    double[] at = Stream.of(places.split(" ")).mapToDouble(Double::parseDouble).toArray();
    Corners corners =
        new Corners(
            new Spot(at[0], at[1]),
            new Spot(at[2], at[3]),
            new Spot(at[4], at[5]),
            new Spot(at[6], at[7]));
    assertEquals(sentence, fault(corners), what);
  }
}

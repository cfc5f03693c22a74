package club.emberwell.exchange.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrawingTest {
  /** Of a fill with bars, not of a leaf or a badge. */
  private static final long PATCH = 16;

  private static final Looks LOOKS = looks();

  private static Looks looks() {
    try {
      List<String[]> rows =
          Files.readAllLines(Path.of("seed-scenario/looks.csv")).stream()
              .filter(line -> !line.isBlank() && !line.startsWith("#"))
              .skip(1)
              .map(line -> line.split(";", -1))
              .collect(Collectors.toList());
      return new Looks(rows);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static BufferedImage drawn(String of, String colour, long seed, Double... at) {
    Sketch sketch = new Sketch(of, colour, false, 1, at.length, Arrays.asList(at), seed);
    return Drawing.of(sketch, LOOKS);
  }

  /** Of a square in the middle of a fill, 0 black to 255 white. */
  private static double light(BufferedImage picture, int left) {
    double sum = 0;
    for (int x = left; x < left + 40; x++) {
      for (int y = 230; y < 270; y++) {
        int rgb = picture.getRGB(x, y);
        sum += ((rgb >> 16 & 255) + (rgb >> 8 & 255) + (rgb & 255)) / 3.0;
      }
    }
    return sum / 1600;
  }

  @ParameterizedTest
  @CsvSource({
    "ply, , true",
    "leather, , true",
    "tile, , true",
    "slate, , false",
    "powder, navy, false",
    "anod, black, false"
  })
  void aMarkGetsDarkerOrPalerWithItsDose(String of, String colour, boolean darker) {
    double little = light(drawn(of, colour, PATCH, -1.0), 235);
    double more = light(drawn(of, colour, PATCH, 0.0), 235);
    assertTrue(darker ? more < little - 8 : more > little + 8, little + " and " + more);
  }

  @Test
  void aCellOfAGridLooksAsItsOwnDose() {
    BufferedImage grid = drawn("ply", null, PATCH, -2.0, 1.0);
    assertTrue(light(grid, 220) > light(grid, 360) + 30);
  }

  @Test
  void theSameResultIsDrawnTheSameAndAnotherIsNot() {
    assertArrayEquals(pixels(drawn("cork", null, 5, 0.3)), pixels(drawn("cork", null, 5, 0.3)));
    assertFalse(
        Arrays.equals(pixels(drawn("cork", null, 5, 0.3)), pixels(drawn("cork", null, 6, 0.3))));
  }

  @Test
  void everyPictureSaysInABandThatItIsDrawn() {
    BufferedImage one = drawn("slate", null, 1, 0.0);
    BufferedImage other = drawn("ply", null, 2, 2.0);
    int from = Drawing.WIDTH * (Drawing.HEIGHT - 36);
    int[] band = Arrays.copyOfRange(pixels(one), from, pixels(one).length);
    assertArrayEquals(band, Arrays.copyOfRange(pixels(other), from, pixels(other).length));
    assertTrue(Arrays.stream(band).distinct().count() == 2, "letters on a ground");
  }

  private static int[] pixels(BufferedImage picture) {
    return picture.getRGB(
        0, 0, picture.getWidth(), picture.getHeight(), null, 0, picture.getWidth());
  }
}

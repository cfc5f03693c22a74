package club.emberwell.tag;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.Arrays;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a phone reads from the drawn square, read here from its path. */
class QrCodeTest {
  private static final Pattern RUN = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-(\\d+)z");
  private static final int PIXELS = 5;
  private static final int LIGHT = 0xFFFFFF;

  /** The square as a camera would see it: the path filled, nothing else known. */
  private static int[] pixels(QrCode code) {
    int side = code.side() * PIXELS;
    int[] seen = new int[side * side];
    Arrays.fill(seen, LIGHT);
    assertEquals("", RUN.matcher(code.path()).replaceAll(""), "nothing but runs");
    RUN.matcher(code.path()).results().forEach(run -> darken(seen, side, run));
    return seen;
  }

  private static void darken(int[] seen, int side, MatchResult run) {
    int x = Integer.parseInt(run.group(1)) * PIXELS;
    int y = Integer.parseInt(run.group(2)) * PIXELS;
    int wide = Integer.parseInt(run.group(3)) * PIXELS;
    assertEquals(run.group(3), run.group(4));
    for (int row = y; row < y + PIXELS; row++) {
      Arrays.fill(seen, row * side + x, row * side + x + wide, 0);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://127.0.0.1:8080/t/K7F-4",
        "https://engraving.example.org/t/K7F-4",
        "https://a-very-long-name-of-a-club.example.org/of/lasers/t/K7F4A-4"
      })
  void theSquareReadsAsTheAddress(String address) throws Exception {
    QrCode code = QrCode.of(address);
    int side = code.side() * PIXELS;
    RGBLuminanceSource source = new RGBLuminanceSource(side, side, pixels(code));
    Result read = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)));
    assertEquals(address, read.getText());
    assertEquals(BarcodeFormat.QR_CODE, read.getBarcodeFormat());
  }

  @Test
  void fourModulesRoundTheSquareAreLight() {
    QrCode code = QrCode.of("https://engraving.example.org/t/K7F-4");
    int side = code.side() * PIXELS;
    int[] seen = pixels(code);
    int quiet = QrCode.QUIET * PIXELS;
    for (int i = 0; i < seen.length; i++) {
      int x = i % side;
      int y = i / side;
      boolean outside = Math.min(x, y) < quiet || Math.max(x, y) >= side - quiet;
      assertFalse(outside && seen[i] != LIGHT, x + " " + y);
    }
    assertEquals(0, seen[quiet * side + quiet], "the finder pattern begins at once");
  }

  @Test
  void whatNoSquareCanHoldIsRefused() {
    String long4000 = "x".repeat(4000);
    assertThrows(IllegalArgumentException.class, () -> QrCode.of(long4000));
  }
}

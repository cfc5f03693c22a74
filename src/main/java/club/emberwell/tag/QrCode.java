package club.emberwell.tag;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/**
 * A text as a square of dark and light modules (ISO/IEC 18004), to be drawn in any size. It is
 * still read where a label lost 15 % of them (level M).
 *
 * @param side modules along one side, with the quiet zone
 * @param path of the dark modules in SVG, one unit a module
 */
public record QrCode(int side, String path) {
  /** Light modules round the square, as the standard asks. */
  static final int QUIET = 4;

  /**
   * The square of a text.
   *
   * @throws IllegalArgumentException for what is longer than a square can hold
   */
  public static QrCode of(String text) {
    try {
      ByteMatrix dark = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
      return new QrCode(dark.getWidth() + 2 * QUIET, path(dark));
    } catch (WriterException e) {
      throw new IllegalArgumentException("too long for a QR code", e);
    }
  }

  // Neighbours in a row are one rectangle, so that no hair of light stands between them.
  private static String path(ByteMatrix dark) {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < dark.getHeight(); y++) {
      int x = 0;
      while (x < dark.getWidth()) {
        int from = x;
        while (x < dark.getWidth() && dark.get(x, y) == 1) {
          x++;
        }
        if (x > from) {
          path.append('M').append(from + QUIET).append(' ').append(y + QUIET);
          path.append('h').append(x - from).append("v1h").append(from - x).append('z');
        }
        x++;
      }
    }
    return path.toString();
  }
}

package club.emberwell.report.photo;

import com.twelvemonkeys.imageio.color.ColorProfiles;
import com.twelvemonkeys.imageio.plugins.webp.lossless.VP8LDecoder;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.awt.image.ColorConvertOp;
import java.io.IOException;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * What of a WebP is stored without loss: the picture itself, or how far a lossy one can be seen
 * through (RFC 9649, sections 3 and 2.7.1.2). The library's reader would decode it into pixels of
 * its own, where nothing can stop it.
 *
 * @param file the upload
 * @param at where the coded image begins
 * @param alpha whether it is no picture but its transparency
 * @param profile of the colours, null = they are as usual
 */
record LosslessWebp(byte[] file, int at, boolean alpha, int width, int height, byte[] profile) {
  /** Signature and sides, which transparency does not have; the decoder skips it. */
  private static final int HEAD = 5;

  /** Bytes of a pixel for what transforms keep of it. */
  private static final int TRANSFORMS = 1;

  /** Bytes of the codes: some 5,000 sets of them. A file of 164 kB can ask for 400 MB. */
  private static final int CODES = 32 << 20;

  /** In the last byte of the head: whether its fourth band means anything. */
  private static final int CLEAR_BIT = 4;

  private static final int RED = 0;
  private static final int GREEN = 1;
  private static final int BLUE = 2;
  private static final int ALPHA = 3;
  private static final int OPAQUE = 0xFF;

  private static final int COMPRESSION = 0b11;
  private static final int FILTER_AT = 2;

  private WatchedRaster decoded(int from, PictureStint stint) throws IOException {
    stint.allow((WatchedRaster.BANDS + TRANSFORMS) * (long) width * height + CODES);
    WatchedRaster pixels = new WatchedRaster(width, height, stint);
    try (WatchedPicture in = new WatchedPicture(file, stint)) {
      in.setByteOrder(ByteOrder.LITTLE_ENDIAN);
      in.seek(from);
      new VP8LDecoder(in, false).readVP8Lossless(pixels, true, null, width, height);
    }
    stint.allow(Long.MAX_VALUE / 2);
    return pixels;
  }

  /**
   * The picture on white.
   *
   * @param step every so many pixels are kept
   */
  BufferedImage picture(int step, PictureStint stint) throws IOException {
    WatchedRaster pixels = decoded(at, stint);
    boolean clear = (file[at + HEAD - 1] >> CLEAR_BIT & 1) != 0;
    BufferedImage kept =
        new BufferedImage(kept(width, step), kept(height, step), BufferedImage.TYPE_3BYTE_BGR);
    for (int y = 0; y < kept.getHeight(); y++) {
      for (int x = 0; x < kept.getWidth(); x++) {
        int fromX = x * step;
        int fromY = y * step;
        int seen = clear ? pixels.band(fromX, fromY, ALPHA) : OPAQUE;
        int rgb =
            onWhite(pixels.band(fromX, fromY, RED), seen) << 16
                | onWhite(pixels.band(fromX, fromY, GREEN), seen) << 8
                | onWhite(pixels.band(fromX, fromY, BLUE), seen);
        kept.setRGB(x, y, rgb);
      }
    }
    return profile == null ? kept : plain(kept);
  }

  /** So many the reader of the library keeps as well. */
  private static int kept(int side, int step) {
    return (side + step - 1) / step;
  }

  private static int onWhite(int colour, int seen) {
    return OPAQUE - (OPAQUE - colour) * seen / OPAQUE;
  }

  private BufferedImage plain(BufferedImage picture) throws IOException {
    ICC_Profile usual = ICC_Profile.getInstance(ColorSpace.CS_sRGB);
    ICC_Profile own = ColorProfiles.createProfile(profile);
    new ColorConvertOp(new ICC_Profile[] {own, usual}, null)
        .filter(picture.getRaster(), picture.getRaster());
    return picture;
  }

  /** Puts a picture on white that was decoded without its transparency. */
  void putOnWhite(BufferedImage picture, int step, PictureStint stint) throws IOException {
    byte[] plane = plane(stint);
    for (int y = 0; y < picture.getHeight(); y++) {
      stint.check();
      for (int x = 0; x < picture.getWidth(); x++) {
        int seen = plane[y * step * width + x * step] & 0xFF;
        int rgb = picture.getRGB(x, y);
        int white =
            onWhite(rgb >> 16 & 0xFF, seen) << 16
                | onWhite(rgb >> 8 & 0xFF, seen) << 8
                | onWhite(rgb & 0xFF, seen);
        picture.setRGB(x, y, white);
      }
    }
  }

  private byte[] plane(PictureStint stint) throws IOException {
    int head = file[at];
    byte[] plane;
    if ((head & COMPRESSION) == 0) {
      plane = Arrays.copyOfRange(file, at + 1, at + 1 + width * height);
    } else {
      WatchedRaster pixels = decoded(at + 1 - HEAD, stint);
      plane = new byte[width * height];
      for (int i = 0; i < plane.length; i++) {
        plane[i] = (byte) pixels.band(i % width, i / width, GREEN);
      }
    }
    stint.check();
    add(plane, head >> FILTER_AT & COMPRESSION);
    return plane;
  }

  /** Each value is stored as its distance from what its neighbours let expect. */
  private void add(byte[] plane, int filter) {
    for (int i = 1; i < plane.length && filter > 0; i++) {
      int left = i % width == 0 ? plane[Math.max(0, i - width)] : plane[i - 1];
      int above = i < width ? plane[i - 1] : plane[i - width];
      plane[i] +=
          (byte)
              switch (filter) {
                case 1 -> left;
                case 2 -> above;
                default -> gradient(plane, i);
              };
    }
  }

  private int gradient(byte[] plane, int i) {
    if (i < width) {
      return plane[i - 1];
    }
    if (i % width == 0) {
      return plane[i - width];
    }
    int expected =
        (plane[i - 1] & 0xFF) + (plane[i - width] & 0xFF) - (plane[i - width - 1] & 0xFF);
    return Math.max(0, Math.min(OPAQUE, expected));
  }
}

package club.emberwell.report.photo;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * A WebP chunk by chunk (RFC 9649, section 2): finds the first image in it and what belongs to
 * that. The decoder would go over every further one as well, each in the place of the one before.
 */
final class WebpParts {
  private static final int RIFF = 12;
  private static final int HEAD = 8;
  private static final int CANVAS = 10;

  /** Width and height of an extended file, less one, 24 bits each. */
  private static final int CANVAS_AT = 24;

  private static final int MOVING = 16;

  private static final int HAS_PROFILE = 0x20;
  private static final int SIDE = 0x3FFF;
  private static final int SIDE_BITS = 14;
  private static final String LOSSY = "VP8 ";
  private static final String LOSSLESS = "VP8L";
  private static final byte[] EXIF_NAME = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);

  /** What the decoder notes of each block of 16 by 16 pixels is less than this a pixel. */
  private static final int LOSSY_PIXEL = 1;

  private final byte[] file;
  private final ByteBuffer bytes;

  private int image;
  private int alpha;
  private int profile;
  private int orientation = ExifOrientation.UPRIGHT;

  WebpParts(byte[] file) {
    this.file = file;
    bytes = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
  }

  PictureParts picture() {
    long end = RIFF - 4 + Integer.toUnsignedLong(bytes.getInt(4));
    if (end > file.length) {
      throw PictureRefused.unreadable();
    }
    boolean extended = name(RIFF).equals("VP8X");
    if (extended) {
      PictureRefused.tooManyPixels(
          1L + (bytes.getInt(CANVAS_AT - 1) >>> Byte.SIZE),
          1L + (bytes.getInt(CANVAS_AT + 2) >>> Byte.SIZE));
    }
    find(extended ? behind(RIFF) : RIFF, (int) end);
    if (image == 0) {
      throw PictureRefused.unreadable();
    }
    PictureRefused.tooManyPixels(side(0), side(1));
    return name(image).equals(LOSSLESS)
        ? new PictureParts(
            file, orientation, WatchedRaster.BANDS, 0, lossless(image, profile(), false))
        : new PictureParts(
            lossy(),
            orientation,
            LOSSY_PIXEL + (alpha > 0 ? WatchedRaster.BANDS + 1 : 0),
            0,
            alpha > 0 ? lossless(alpha, null, true) : null);
  }

  private LosslessWebp lossless(int chunk, byte[] profile, boolean clear) {
    return new LosslessWebp(file, chunk + HEAD, clear, side(0), side(1), profile);
  }

  private byte[] profile() {
    int from = profile + HEAD;
    return profile == 0 ? null : Arrays.copyOfRange(file, from, from + length(profile));
  }

  /** A file of the lossy picture and its profile. */
  private byte[] lossy() {
    PictureParts.Copy still = new PictureParts.Copy(file, file.length + RIFF + HEAD + CANVAS);
    still.add(0, RIFF);
    if (profile > 0) {
      still.add(canvas(), 0, HEAD + CANVAS);
      add(still, profile);
    }
    add(still, image);
    byte[] made = still.bytes();
    ByteBuffer.wrap(made).order(ByteOrder.LITTLE_ENDIAN).putInt(4, made.length - HEAD);
    return made;
  }

  /** Notes where the first of each chunk begins that is kept. */
  private void find(int from, int end) {
    for (int at = from; at + HEAD <= end; at = behind(at)) {
      if (behind(at) > end + 1) {
        throw PictureRefused.unreadable();
      }
      switch (name(at)) {
        case LOSSY, LOSSLESS -> image = image == 0 ? at : image;
        case "ANMF" -> {
          if (image == 0) {
            find(at + HEAD + MOVING, at + HEAD + length(at));
          }
        }
        case "ALPH" -> alpha = image == 0 && alpha == 0 ? at : alpha;
        case "ICCP" -> profile = length(at) <= PictureParts.PROFILE && profile == 0 ? at : profile;
        case "EXIF" -> exif(at + HEAD, length(at));
        default -> {
          // whatever else is told
        }
      }
    }
  }

  private void exif(int from, int length) {
    boolean named =
        length > EXIF_NAME.length
            && ByteBuffer.wrap(file, from, EXIF_NAME.length).equals(ByteBuffer.wrap(EXIF_NAME));
    int before = named ? EXIF_NAME.length : 0;
    orientation = ExifOrientation.of(ByteBuffer.wrap(file, from + before, length - before));
  }

  /** A canvas as large as the image, whatever the file said of it. */
  private byte[] canvas() {
    int width = side(0) - 1;
    int height = side(1) - 1;
    return ByteBuffer.allocate(HEAD + CANVAS)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put("VP8X".getBytes(StandardCharsets.US_ASCII))
        .putInt(CANVAS)
        .putInt(HAS_PROFILE)
        .putShort((short) width)
        .put((byte) 0)
        .putShort((short) height)
        .put((byte) 0)
        .array();
  }

  /**
   * A side as the image itself tells it (RFC 6386, section 9.1; RFC 9649, section 3.4).
   *
   * @param which 0 = its width, 1 = its height
   */
  private int side(int which) {
    int content = image + HEAD;
    return name(image).equals(LOSSY)
        ? bytes.getShort(content + 6 + which * Short.BYTES) & SIDE
        : 1 + (bytes.getInt(content + 1) >>> which * SIDE_BITS & SIDE);
  }

  private void add(PictureParts.Copy still, int chunk) {
    if (chunk > 0) {
      still.add(chunk, Math.min(file.length, behind(chunk)));
      // the last one may lack what fills it up to an even length
      if (behind(chunk) > file.length) {
        still.add(new byte[1], 0, 1);
      }
    }
  }

  private String name(int at) {
    return new String(file, at, Integer.BYTES, StandardCharsets.US_ASCII);
  }

  private int length(int at) {
    int length = bytes.getInt(at + Integer.BYTES);
    if (length < 0 || length > file.length - at - HEAD) {
      throw PictureRefused.unreadable();
    }
    return length;
  }

  private int behind(int at) {
    int length = length(at);
    return at + HEAD + length + (length & 1);
  }
}

package club.emberwell.report.photo;

import club.emberwell.report.ReportLimits;
import java.awt.image.BufferedImage;
import java.io.IOException;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;

/**
 * What decoding a picture takes, reckoned from its header.
 *
 * @param step every so many pixels of a row and a column are kept
 * @param bytes of memory at the same time, at the most
 */
record PictureNeed(int step, long bytes) {
  /** The three sizes, and the large one turned upright: 1600 by 1600 pixels of 4 bytes each. */
  private static final long SIZES =
      3L * Integer.BYTES * ReportLimits.PHOTO_SIDE * ReportLimits.PHOTO_SIDE;

  /** Rows that decoders hold as they are read and as they become pixels. */
  private static final int ROWS = 4;

  /**
   * Of a picture.
   *
   * @param reader has it before it; null where we decode it ourselves
   * @param most the most memory it can have; a larger picture is kept more coarsely where its
   *     decoder can do that
   * @throws PictureRefused where it has too many pixels
   */
  static PictureNeed of(PictureParts parts, ImageReader reader, long most) throws IOException {
    int width = reader == null ? parts.lossless().width() : reader.getWidth(0);
    int height = reader == null ? parts.lossless().height() : reader.getHeight(0);
    PictureRefused.tooManyPixels(width, height);
    long pixels = (long) width * height;
    int pixel = reader == null ? 3 : pixel(reader);
    long all = parts.held() * pixels + SIZES + (long) ROWS * pixel * width;
    int least = Math.max(1, Math.max(width, height) / (2 * ReportLimits.PHOTO_SIDE));
    int step = least;
    while (all + kept(pixels, step, pixel) > most && step < 4 * least) {
      step++;
    }
    long bytes = all + kept(pixels, step, pixel);
    if (bytes > most) {
      throw PictureRefused.tooManyPixels(pixels * most / bytes);
    }
    // what lies outside of the heap may be more than is left of it: then the picture goes alone
    return new PictureNeed(step, bytes + parts.outside() * pixels);
  }

  /** What is decoded, and its half where it is made smaller. */
  private static long kept(long pixels, int step, int pixel) {
    return pixels / ((long) step * step) * (pixel + 1);
  }

  /**
   * Bytes of a pixel that is kept: as its file has it, as it is decoded, and once more where the
   * JDK makes plain colours of it before it draws.
   */
  private static int pixel(ImageReader reader) throws IOException {
    ImageTypeSpecifier raw = reader.getRawImageType(0);
    ImageTypeSpecifier decoded = reader.getImageTypes(0).next();
    int bytes = bytes(decoded);
    if (!decoded.equals(raw)) {
      bytes += raw == null ? Integer.BYTES : bytes(raw);
    }
    boolean plain = decoded.getBufferedImageType() == BufferedImage.TYPE_3BYTE_BGR;
    return bytes + (plain ? 0 : Integer.BYTES);
  }

  private static int bytes(ImageTypeSpecifier type) {
    return (type.getColorModel().getPixelSize() + Byte.SIZE - 1) / Byte.SIZE;
  }
}

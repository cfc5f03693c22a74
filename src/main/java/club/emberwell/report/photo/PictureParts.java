package club.emberwell.report.photo;

import java.util.Arrays;

/**
 * What of an upload a decoder is given: the picture and what its colours need. Everything else that
 * formats allow (texts that inflate a thousandfold, previews, further pictures, repeated ones) is
 * left out before anything of it is looked at.
 *
 * @param file a file of the same format
 * @param orientation as EXIF tells it, 1 to 8
 * @param held bytes of heap that its decoder keeps for each pixel, whatever it leaves out
 * @param outside the same of memory outside of the heap
 * @param lossless what of a WebP we decode ourselves, or null
 */
record PictureParts(byte[] file, int orientation, int held, int outside, LosslessWebp lossless) {
  /** Colour profiles above this are none of a camera; without one the colours are a little off. */
  static final int PROFILE = 1 << 20;

  /**
   * Takes an upload apart.
   *
   * @throws PictureRefused where it is not whole, or would cost too much
   */
  static PictureParts of(PictureFormat format, byte[] upload) {
    try {
      return switch (format) {
        case JPEG -> new JpegParts(upload).picture();
        case PNG -> new PngParts(upload).picture();
        case WEBP -> new WebpParts(upload).picture();
      };
    } catch (IndexOutOfBoundsException e) {
      // a part says it is longer than the file
      throw PictureRefused.unreadable();
    }
  }

  /** Bytes that are copied from one file into another, which is no longer. */
  static final class Copy {
    private final byte[] from;
    private final byte[] to;
    private int length;

    Copy(byte[] from, int most) {
      this.from = from;
      to = new byte[most];
    }

    /** Adds those from one place up to another. */
    void add(int start, int end) {
      add(from, start, end);
    }

    void add(byte[] other, int start, int end) {
      System.arraycopy(other, start, to, length, end - start);
      length += end - start;
    }

    int length() {
      return length;
    }

    byte[] bytes() {
      return length == to.length ? to : Arrays.copyOf(to, length);
    }
  }
}

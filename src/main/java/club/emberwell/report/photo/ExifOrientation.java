package club.emberwell.report.photo;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How a camera was held, the one thing we read of all that files tell beside the picture. Read by
 * hand: libraries read every tag of the block, and 64 kB of tags that all point at the same bytes
 * become hundreds of megabytes.
 */
final class ExifOrientation {
  static final int UPRIGHT = 1;

  private static final int TAG = 0x0112;
  private static final int SHORT = 3;
  private static final int ENTRY = 12;
  private static final int MARK = 42;

  private ExifOrientation() {}

  /**
   * Of a TIFF block as EXIF has it (EXIF 2.32, section 4.6; TIFF 6.0, section 2).
   *
   * @return 1 to 8; 1 where it is not told
   */
  static int of(ByteBuffer tiff) {
    ByteBuffer block = tiff.slice();
    if (block.remaining() < 8) {
      return UPRIGHT;
    }
    block.order(block.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    long at = Integer.toUnsignedLong(block.getInt(4));
    if (block.getShort(2) != MARK || at + Short.BYTES > block.limit()) {
      return UPRIGHT;
    }
    int first = (int) at + Short.BYTES;
    int entries = Short.toUnsignedInt(block.getShort((int) at));
    for (int i = 0; i < entries && first + (i + 1) * ENTRY <= block.limit(); i++) {
      int entry = first + i * ENTRY;
      if (Short.toUnsignedInt(block.getShort(entry)) == TAG && block.getShort(entry + 2) == SHORT) {
        int told = block.getShort(entry + 8);
        return told >= UPRIGHT && told <= 8 ? told : UPRIGHT;
      }
    }
    return UPRIGHT;
  }
}

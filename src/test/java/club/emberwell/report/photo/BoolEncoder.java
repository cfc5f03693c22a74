package club.emberwell.report.photo;

import java.util.Arrays;

/** Writes bits by their chances, as RFC 6386, section 7.3, has it. */
final class BoolEncoder {
  private static final int EVEN = 128;

  private long bottom;
  private int range = 255;
  private int bits = 24;
  private byte[] written = new byte[1 << 16];
  private int length;

  /**
   * One bit.
   *
   * @param chance that it is 0, of 256
   */
  void bit(int chance, boolean set) {
    int split = 1 + ((range - 1) * chance >> 8);
    if (set) {
      bottom += split;
      range -= split;
    } else {
      range = split;
    }
    while (range < 128) {
      range <<= 1;
      if ((bottom & 1L << 31) != 0) {
        carry();
      }
      bottom = bottom << 1 & 0xFFFF_FFFFL;
      if (--bits == 0) {
        put((byte) (bottom >>> 24));
        bottom &= 0xFF_FFFFL;
        bits = 8;
      }
    }
  }

  private void carry() {
    int at = length - 1;
    while (written[at] == (byte) 0xFF) {
      written[at--] = 0;
    }
    written[at]++;
  }

  private void put(byte b) {
    if (length == written.length) {
      written = Arrays.copyOf(written, 2 * length);
    }
    written[length++] = b;
  }

  /** A number of so many bits, the highest first. */
  void literal(int value, int count) {
    for (int bit = count - 1; bit >= 0; bit--) {
      bit(EVEN, (value >> bit & 1) != 0);
    }
  }

  byte[] bytes() {
    literal(0, 32);
    return Arrays.copyOf(written, length);
  }
}

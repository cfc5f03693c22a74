package club.emberwell.report.photo;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;

/** The formats we take, told by their first bytes and never by a name or a header. */
enum PictureFormat {
  JPEG,
  PNG,
  WEBP;

  private static final byte[] PNG_START = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

  private static final int RIFF_SIZE_AT = 4;

  static Optional<PictureFormat> of(byte[] file) {
    if (file.length > 3
        && (file[0] & 0xFF) == 0xFF
        && (file[1] & 0xFF) == 0xD8
        && (file[2] & 0xFF) == 0xFF) {
      return Optional.of(JPEG);
    }
    if (starts(file, 0, PNG_START)) {
      return Optional.of(PNG);
    }
    byte[] riff = {'R', 'I', 'F', 'F'};
    byte[] webp = {'W', 'E', 'B', 'P'};
    return starts(file, 0, riff) && starts(file, 8, webp) ? Optional.of(WEBP) : Optional.empty();
  }

  private static boolean starts(byte[] file, int from, byte[] with) {
    if (file.length < from + with.length) {
      return false;
    }
    for (int i = 0; i < with.length; i++) {
      if (file[from + i] != with[i]) {
        return false;
      }
    }
    return true;
  }

  /** Whether the file is there to its end, as far as its format tells. */
  boolean isWhole(byte[] file) {
    return switch (this) {
      case JPEG -> jpegEnds(file);
      case WEBP -> webpEnds(file);
      // its decoder misses the end by itself
      case PNG -> true;
    };
  }

  /**
   * Whether a WebP holds as many bytes as its RIFF header says; decoders fill up what is cut off.
   */
  private static boolean webpEnds(byte[] file) {
    int said = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).getInt(RIFF_SIZE_AT);
    return Integer.toUnsignedLong(said) + RIFF_SIZE_AT + Integer.BYTES <= file.length;
  }

  /**
   * Whether a JPEG has its end marker behind the start of the scan; decoders fill up what is cut
   * off with grey instead of refusing it.
   */
  private static boolean jpegEnds(byte[] file) {
    int at = 2;
    while (at + 4 <= file.length && (file[at] & 0xFF) == 0xFF) {
      int marker = file[at + 1] & 0xFF;
      if (marker == 0xFF) {
        at++;
        continue;
      }
      if (marker == 0xDA) {
        return endMarkerBehind(file, at);
      }
      at += 2 + ((file[at + 2] & 0xFF) << 8 | file[at + 3] & 0xFF);
    }
    return false;
  }

  private static boolean endMarkerBehind(byte[] file, int from) {
    for (int i = from; i + 1 < file.length; i++) {
      if ((file[i] & 0xFF) == 0xFF && (file[i + 1] & 0xFF) == 0xD9) {
        return true;
      }
    }
    return false;
  }
}

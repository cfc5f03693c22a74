package club.emberwell.report.photo;

import java.util.Optional;

/** The formats we take, told by their first bytes and never by a name or a header. */
enum PictureFormat {
  JPEG,
  PNG,
  WEBP;

  private static final byte[] PNG_START = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

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
}

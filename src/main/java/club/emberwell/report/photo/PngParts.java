package club.emberwell.report.photo;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/**
 * A PNG chunk by chunk (PNG, third edition, section 5): keeps those without which there is no
 * picture. Texts and profiles are compressed, and the JDK inflates them whether asked to or not.
 */
final class PngParts {
  private static final int START = 8;
  private static final int AROUND = 12;

  /** In the first chunk, which is always the header. */
  private static final int WIDTH_AT = 16;

  private static final String END = "IEND";
  private static final String EXIF = "eXIf";
  private static final Set<String> KEPT = Set.of("IHDR", "PLTE", "tRNS", "IDAT", END);

  private final byte[] file;

  PngParts(byte[] file) {
    this.file = file;
  }

  PictureParts picture() {
    ByteBuffer bytes = ByteBuffer.wrap(file);
    PictureRefused.tooManyPixels(
        Integer.toUnsignedLong(bytes.getInt(WIDTH_AT)),
        Integer.toUnsignedLong(bytes.getInt(WIDTH_AT + Integer.BYTES)));
    PictureParts.Copy kept = new PictureParts.Copy(file, file.length);
    kept.add(0, START);
    int orientation = ExifOrientation.UPRIGHT;
    int at = START;
    String type = "";
    while (!type.equals(END)) {
      long length = Integer.toUnsignedLong(bytes.getInt(at));
      if (length + AROUND > file.length - at) {
        throw PictureRefused.unreadable();
      }
      type = new String(file, at + Integer.BYTES, Integer.BYTES, StandardCharsets.US_ASCII);
      int end = at + AROUND + (int) length;
      if (KEPT.contains(type)) {
        kept.add(at, end);
      } else if (type.equals(EXIF)) {
        orientation = ExifOrientation.of(ByteBuffer.wrap(file, at + START, (int) length));
      }
      at = end;
    }
    return new PictureParts(kept.bytes(), orientation, 0, 0, null);
  }
}

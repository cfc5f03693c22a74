package club.emberwell.report.photo;

import club.emberwell.report.photo.PictureRefused.Fault;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * A JPEG segment by segment (ITU-T T.81, annex B): keeps what the picture is made of, the two
 * segments that say how its colours are meant, and a colour profile.
 */
final class JpegParts {
  /**
   * Scans of a progressive picture: encoders make 3 to 14. Each goes over all pixels, so a file of
   * many empty ones costs hours.
   */
  static final int SCANS = 30;

  private static final int START = 0xD8;
  private static final int END = 0xD9;
  private static final int SCAN = 0xDA;
  private static final int COMMENT = 0xFE;
  private static final int JFIF = 0xE0;
  private static final int EXIF = 0xE1;
  private static final int ICC = 0xE2;
  private static final int ADOBE = 0xEE;
  private static final int LAST_OF_APPLICATIONS = 0xEF;

  /** In a frame, from its length on. */
  private static final int COMPONENTS_AT = 7;

  private static final byte[] EXIF_NAME = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] ICC_NAME = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);

  private final byte[] file;
  private final PictureParts.Copy kept;
  private int orientation = ExifOrientation.UPRIGHT;
  private int profile;
  private int frames;
  private int components;
  private int scans;

  JpegParts(byte[] file) {
    this.file = file;
    kept = new PictureParts.Copy(file, file.length);
  }

  PictureParts picture() {
    boolean profiled = profileLength() <= PictureParts.PROFILE;
    kept.add(0, 2);
    int at = 2;
    while (true) {
      int marker = marker(at);
      at = behindMarker(at);
      if (marker == END) {
        break;
      }
      int end = at + length(at);
      if (end > file.length) {
        throw PictureRefused.unreadable();
      }
      look(marker, at, end);
      if (marker == SCAN) {
        end = behindScan(end);
      }
      if (isKept(marker, at, profiled)) {
        kept.add(at - 2, end);
      }
      at = end;
    }
    if (frames != 1 || scans == 0) {
      throw PictureRefused.unreadable();
    }
    kept.add(new byte[] {(byte) 0xFF, (byte) END}, 0, 2);
    // of several scans, all coefficients wait for the last one
    return new PictureParts(
        kept.bytes(), orientation, 0, scans > 1 ? Short.BYTES * components : 0, null);
  }

  /** The code of the marker at a place; what stands there must be one. */
  private int marker(int at) {
    int code = behindMarker(at) - 1;
    int marker = file[code] & 0xFF;
    if ((file[at] & 0xFF) != 0xFF || marker <= START && marker >= 0xD0 || marker < 0xC0) {
      throw PictureRefused.unreadable();
    }
    return marker;
  }

  /** Any number of FF may fill up before the code. */
  private int behindMarker(int at) {
    int code = at + 1;
    while ((file[code] & 0xFF) == 0xFF) {
      code++;
    }
    return code + 1;
  }

  private int length(int at) {
    int length = (file[at] & 0xFF) << 8 | file[at + 1] & 0xFF;
    if (length < 2) {
      throw PictureRefused.unreadable();
    }
    return length;
  }

  private void look(int marker, int at, int end) {
    if (isFrame(marker)) {
      frames++;
      components = file[at + COMPONENTS_AT];
      // others are lossless, hierarchical or arithmetic: no camera or editor writes them
      if (marker > 0xC2) {
        throw PictureRefused.unreadable();
      }
    } else if (marker == SCAN && ++scans > SCANS) {
      throw new PictureRefused(
          Fault.TOO_COSTLY,
          "This JPEG is stored in more than %d scans. Save it again as an ordinary JPEG."
              .formatted(SCANS));
    } else if (marker == EXIF && starts(at + 2, EXIF_NAME)) {
      int tiff = at + 2 + EXIF_NAME.length;
      orientation = ExifOrientation.of(ByteBuffer.wrap(file, tiff, end - tiff));
    }
  }

  private static boolean isFrame(int marker) {
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
  }

  private boolean isKept(int marker, int at, boolean profiled) {
    if (marker == ICC) {
      return profiled && starts(at + 2, ICC_NAME);
    }
    return marker == JFIF
        || marker == ADOBE
        || marker != COMMENT && (marker < JFIF || marker > LAST_OF_APPLICATIONS);
  }

  /** Behind the coded pixels of a scan: at the next marker that is no part of them. */
  private int behindScan(int from) {
    int at = from;
    while (true) {
      if ((file[at] & 0xFF) == 0xFF) {
        int code = file[at + 1] & 0xFF;
        boolean within = code == 0 || code >= 0xD0 && code < START;
        if (!within && code != 0xFF) {
          return at;
        }
      }
      at++;
    }
  }

  private boolean starts(int at, byte[] with) {
    return at + with.length <= file.length
        && ByteBuffer.wrap(file, at, with.length).equals(ByteBuffer.wrap(with));
  }

  /** Bytes of the colour profile, all its segments together. */
  private int profileLength() {
    int at = 2;
    while (marker(at) != SCAN && marker(at) != END) {
      boolean icc = marker(at) == ICC;
      at = behindMarker(at);
      profile += icc && starts(at + 2, ICC_NAME) ? length(at) : 0;
      at += length(at);
    }
    return profile;
  }
}

package club.emberwell.report.photo;

import club.emberwell.report.ReportLimits;

/** The uploaded file is no picture we take. */
public class PictureRefused extends RuntimeException {
  /** Why, in the terms of a program. */
  public enum Fault {
    TOO_BIG,
    OTHER_FORMAT,
    TOO_MANY_PIXELS,
    TOO_COSTLY,
    UNREADABLE
  }

  private final Fault fault;

  PictureRefused(Fault fault, String sentence) {
    super(sentence);
    this.fault = fault;
  }

  /** A file that need not even be read. */
  public static PictureRefused tooBig() {
    return new PictureRefused(
        Fault.TOO_BIG, "A picture has at most " + ReportLimits.PHOTO_UPLOAD / 1024 / 1024 + " MB.");
  }

  static PictureRefused unreadable() {
    return new PictureRefused(Fault.UNREADABLE, "This picture is damaged.");
  }

  /** Refuses a picture that says it has too many pixels. */
  static void tooManyPixels(long width, long height) {
    long most = ReportLimits.PHOTO_PIXELS;
    if (width > most || height > most || width * height > most) {
      throw tooManyPixels(most);
    }
  }

  static PictureRefused tooManyPixels(long most) {
    return new PictureRefused(
        Fault.TOO_MANY_PIXELS, "A picture has at most " + most / 1_000_000 + " million pixels.");
  }

  public Fault fault() {
    return fault;
  }
}

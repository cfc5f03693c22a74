package club.emberwell.report.photo;

import club.emberwell.report.ReportLimits;

/** The uploaded file is no picture we take. */
public class PictureRefused extends RuntimeException {
  /** Why, in the terms of a program. */
  public enum Fault {
    TOO_BIG,
    OTHER_FORMAT,
    TOO_MANY_PIXELS,
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

  public Fault fault() {
    return fault;
  }
}

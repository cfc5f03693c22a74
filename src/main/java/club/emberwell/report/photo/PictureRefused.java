package club.emberwell.report.photo;

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

  public Fault fault() {
    return fault;
  }
}

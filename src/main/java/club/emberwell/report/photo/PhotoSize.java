package club.emberwell.report.photo;

import club.emberwell.remark.Coded;
import club.emberwell.report.ReportLimits;

/** The sizes in which a photo is kept. */
public enum PhotoSize implements Coded {
  /** In lists. */
  THUMB("thumb", ReportLimits.THUMB_SIDE),
  /** On a page. */
  MIDDLE("middle", ReportLimits.MIDDLE_SIDE),
  /** By itself. */
  LARGE("large", ReportLimits.PHOTO_SIDE);

  private final String code;
  private final int side;

  PhotoSize(String code, int side) {
    this.code = code;
    this.side = side;
  }

  @Override
  public String code() {
    return code;
  }

  /** The longer side is no longer, pixels. */
  public int side() {
    return side;
  }
}

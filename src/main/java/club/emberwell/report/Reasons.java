package club.emberwell.report;

import club.emberwell.bench.FieldReader;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;

/** Reasons people give for a change. */
final class Reasons {
  private Reasons() {}

  /** The reason without space around it, null where none was given. */
  static String checked(String reason) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String text = in.text("/reason", reason, ReportLimits.REASON, true);
    if (in.failed()) {
      throw new EntryRefused(in.remarks());
    }
    return text;
  }

  /** A reason that must be there. */
  static String needed(String reason) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    in.required("/reason", reason);
    if (in.failed()) {
      throw new EntryRefused(in.remarks());
    }
    return checked(reason);
  }
}

package club.emberwell.entry;

import club.emberwell.bench.FieldReader;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Remarks;

/** Reasons people give for a change. */
public final class Reasons {
  /** Characters of a reason. */
  public static final int MOST = 1000;

  private Reasons() {}

  /** The reason without space around it, null where none was given. */
  public static String checked(String reason) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String text = in.text("/reason", reason, MOST, true);
    Remarks.refuse(in.remarks());
    return text;
  }

  /** A reason that must be there. */
  public static String needed(String reason) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    in.required("/reason", reason);
    Remarks.refuse(in.remarks());
    return checked(reason);
  }
}

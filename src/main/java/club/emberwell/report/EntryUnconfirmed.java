package club.emberwell.report;

import club.emberwell.remark.Remark;
import java.util.List;

/** Values look implausible and whoever posts has not said yet that they are meant. */
public class EntryUnconfirmed extends RuntimeException {
  private final transient List<Remark> warnings;

  public EntryUnconfirmed(List<Remark> warnings) {
    super("Please check these values.");
    this.warnings = List.copyOf(warnings);
  }

  /** Their fields go into {@code confirmed} when they are meant. */
  public List<Remark> warnings() {
    return warnings;
  }
}

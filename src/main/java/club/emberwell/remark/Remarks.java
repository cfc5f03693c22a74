package club.emberwell.remark;

import java.util.Collection;
import java.util.List;

/** Questions asked of all remarks about one entry. */
public final class Remarks {
  private Remarks() {}

  public static List<Remark> errors(List<Remark> remarks) {
    return remarks.stream().filter(Remark::isError).toList();
  }

  /**
   * Ends an action whose entry has faults.
   *
   * @throws EntryRefused where a remark is an error
   */
  public static void refuse(List<Remark> remarks) {
    if (remarks.stream().anyMatch(Remark::isError)) {
      throw new EntryRefused(remarks);
    }
  }

  /**
   * Implausible values that nobody has said are meant.
   *
   * @param confirmed pointers of those that are meant, or null
   */
  public static List<Remark> unconfirmed(List<Remark> remarks, Collection<String> confirmed) {
    return remarks.stream()
        .filter(r -> r.severity() == Severity.WARNING)
        .filter(r -> confirmed == null || !confirmed.contains(r.field()))
        .toList();
  }
}

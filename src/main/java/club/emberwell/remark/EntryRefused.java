package club.emberwell.remark;

import java.util.List;

/** An entry that cannot be stored, with a remark for every field at fault. */
public class EntryRefused extends RuntimeException {
  private final transient List<Remark> remarks;

  public EntryRefused(List<Remark> remarks) {
    super(remarks.isEmpty() ? "refused" : remarks.get(0).detail());
    this.remarks = List.copyOf(remarks);
  }

  public EntryRefused(Remark remark) {
    this(List.of(remark));
  }

  /**
   * One field at fault.
   *
   * @param pointer of the field (RFC 6901); empty = the whole
   * @param detail one sentence for a person
   */
  public EntryRefused(RemarkId id, String pointer, String detail) {
    this(Remark.error(id, pointer, detail));
  }

  /** At least one error; warnings may stand beside it. */
  public List<Remark> remarks() {
    return remarks;
  }
}

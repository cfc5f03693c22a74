package club.emberwell.exchange.bench;

import club.emberwell.remark.Coded;
import club.emberwell.remark.Remark;
import java.util.List;
import java.util.UUID;

/**
 * What becomes of a copy.
 *
 * @param preview true: nothing was written
 * @param savedAt when it was saved, as it says
 * @param member whose bench it was, as it says
 * @param things in the order in which they are restored
 * @param photos what becomes of its pictures
 */
public record CopyOutcome(
    boolean preview, String savedAt, String member, List<Thing> things, Photos photos) {

  /** What becomes of a thing. */
  public enum Fate implements Coded {
    NEW("new", "New"),
    ALIKE("alike", "Already here, alike"),
    BESIDE("beside", "Already here, but different: kept beside"),
    REFUSED("refused", "Not restored");

    private final String code;
    private final String label;

    Fate(String code, String label) {
      this.code = code;
      this.label = label;
    }

    @Override
    public String code() {
      return code;
    }

    public String label() {
      return label;
    }
  }

  /**
   * A thing of the copy.
   *
   * @param line where it stands in the list of its kind, 1 = the first
   * @param was its id in the copy; null where that cannot be read
   * @param id under which it is here now, or would be; null where it is refused
   * @param name as it is called here
   * @param notes why it is refused, or what could not be kept
   */
  public record Thing(
      BenchKind kind, int line, UUID was, UUID id, String name, Fate fate, List<Note> notes) {}

  /**
   * Something to be said of a thing.
   *
   * @param field JSON pointer of the field of the thing, empty = the whole
   * @param text a sentence
   */
  public record Note(String field, String text) {
    static Note of(String text) {
      return new Note("", text);
    }

    static Note of(Remark remark) {
      return new Note(remark.field(), remark.detail());
    }

    /** For programs and logs. */
    @Override
    public String toString() {
      return field.isEmpty() ? text : field + ": " + text;
    }
  }

  /**
   * Pictures.
   *
   * @param restored brought back, or that would be
   * @param left that were not brought back for want of time: restore the same file again
   * @param refused sentences
   */
  public record Photos(int restored, int left, List<String> refused) {}

  public long many(Fate fate) {
    return things.stream().filter(thing -> thing.fate() == fate).count();
  }

  public List<Thing> of(BenchKind kind) {
    return things.stream().filter(thing -> thing.kind() == kind).toList();
  }
}

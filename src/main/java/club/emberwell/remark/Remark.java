package club.emberwell.remark;

import java.util.List;

/**
 * Something noticed while reading an entry.
 *
 * @param id the code of a {@link RemarkId}; stored and never renamed
 * @param severity what it means for the entry
 * @param field JSON pointer of the field it touches, e.g. {@code /settings/speed}; empty = the
 *     whole
 * @param detail one sentence for a person
 * @param readings what an ambiguous text could have meant, each itself accepted when typed; or
 *     empty
 */
public record Remark(
    String id, Severity severity, String field, String detail, List<String> readings) {
  private static final List<RemarkId> OF_READING =
      List.of(RemarkId.READ_AS, RemarkId.UNIT_ASSUMED, RemarkId.WORDS_LEFT_OUT);

  public Remark {
    readings = List.copyOf(readings);
  }

  public Remark(
      RemarkId id, Severity severity, String field, String detail, List<String> readings) {
    this(id.code(), severity, field, detail, readings);
  }

  public static Remark error(RemarkId id, String field, String detail) {
    return new Remark(id, Severity.ERROR, field, detail, List.of());
  }

  public static Remark warning(RemarkId id, String field, String detail) {
    return new Remark(id, Severity.WARNING, field, detail, List.of());
  }

  public static Remark info(RemarkId id, String field, String detail) {
    return new Remark(id, Severity.INFO, field, detail, List.of());
  }

  /**
   * The same remark at another field; the readers of single values do not know where they stand.
   */
  public Remark at(String pointer) {
    return new Remark(id, severity, pointer, detail, readings);
  }

  /** The same remark, weighing otherwise. */
  public Remark as(Severity other) {
    return new Remark(id, other, field, detail, readings);
  }

  /** The same remark in other words, with other readings. */
  public Remark with(String words, List<String> others) {
    return new Remark(id, severity, field, words, others);
  }

  /** Whether it says what a value was read as, and not that anything is odd. */
  public boolean tellsReading() {
    return OF_READING.stream().anyMatch(this::is);
  }

  public boolean is(RemarkId other) {
    return other.code().equals(id);
  }

  public boolean isError() {
    return severity == Severity.ERROR;
  }
}

package club.emberwell.api.view;

import club.emberwell.remark.Remark;
import club.emberwell.remark.Severity;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * Something noticed while reading an entry.
 *
 * @param pointer of the field, empty for the whole entry
 * @param id stable, for programs
 * @param readings what the text could have meant instead; or empty
 */
public record RemarkJson(
    String pointer,
    String id,
    String detail,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> readings) {
  /** The implausible values. */
  public static List<RemarkJson> warnings(List<Remark> remarks) {
    return of(remarks, Severity.WARNING);
  }

  /** What is only worth knowing. */
  public static List<RemarkJson> notes(List<Remark> remarks) {
    return of(remarks, Severity.INFO);
  }

  /** What is at fault. */
  public static List<RemarkJson> errors(List<Remark> remarks) {
    return of(remarks, Severity.ERROR);
  }

  private static List<RemarkJson> of(List<Remark> remarks, Severity severity) {
    return remarks.stream()
        .filter(r -> r.severity() == severity)
        .map(r -> new RemarkJson(r.field(), r.id(), r.detail(), r.readings()))
        .toList();
  }
}

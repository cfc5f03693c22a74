package club.emberwell.access.problem;

import club.emberwell.remark.Remark;
import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;
import java.util.Map;

/**
 * Why a request was not done, as RFC 9457 says it.
 *
 * @param kind gives type, title and status
 * @param detail one sentence for a person
 * @param id what to name when asking the operator about it; null but for our own faults
 * @param errors the fields at fault
 * @param more extension members (section 3.2), by name
 * @param headers what the answer must carry besides
 */
@JsonPropertyOrder({"type", "title", "status", "detail", "id", "errors"})
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Problem(
    @JsonIgnore ProblemKind kind,
    String detail,
    String id,
    List<Fault> errors,
    @JsonAnyGetter Map<String, Object> more,
    @JsonIgnore Map<String, String> headers) {

  /**
   * One field at fault.
   *
   * @param pointer JSON pointer (RFC 6901) into what was sent; empty = the whole
   * @param readings what an ambiguous text could have meant; or empty
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record Fault(@JsonInclude String pointer, String detail, List<String> readings) {
    public static Fault of(Remark remark) {
      return new Fault(remark.field(), remark.detail(), remark.readings());
    }
  }

  public Problem {
    errors = List.copyOf(errors);
    more = Map.copyOf(more);
    headers = Map.copyOf(headers);
  }

  /** Where this kind is explained. */
  public String getType() {
    return kind.type();
  }

  public String getTitle() {
    return kind.title();
  }

  public int getStatus() {
    return kind.status();
  }

  public Problem with(String header, String value) {
    return new Problem(kind, detail, id, errors, more, Map.of(header, value));
  }

  /** To be thrown from wherever the request cannot go on. */
  public ProblemException exception() {
    return new ProblemException(this);
  }
}

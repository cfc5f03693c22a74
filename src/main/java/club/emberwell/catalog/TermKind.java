package club.emberwell.catalog;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Optional;
import java.util.stream.Stream;

/** The separate vocabularies; a slug is unique within one of them. */
public enum TermKind {
  @JsonProperty("material")
  MATERIAL("material"),
  @JsonProperty("coating")
  COATING("coating"),
  @JsonProperty("colour")
  COLOUR("colour"),
  @JsonProperty("defect")
  DEFECT("defect");

  private final String code;

  TermKind(String code) {
    this.code = code;
  }

  /** The word in the API, in addresses and in the database. */
  public String code() {
    return code;
  }

  public static Optional<TermKind> of(String code) {
    return Stream.of(values()).filter(kind -> kind.code.equals(code)).findFirst();
  }
}

package club.emberwell.catalog;

import club.emberwell.remark.Coded;
import com.fasterxml.jackson.annotation.JsonProperty;

/** The separate vocabularies; a slug is unique within one of them. */
public enum TermKind implements Coded {
  @JsonProperty("material")
  MATERIAL("material", "Materials"),
  @JsonProperty("coating")
  COATING("coating", "Coatings"),
  @JsonProperty("colour")
  COLOUR("colour", "Colours"),
  @JsonProperty("defect")
  DEFECT("defect", "Defects");

  private final String code;
  private final String plural;

  TermKind(String code, String plural) {
    this.code = code;
    this.plural = plural;
  }

  /** The word in the API, in addresses and in the database. */
  @Override
  public String code() {
    return code;
  }

  /** What a list of them is called. */
  public String plural() {
    return plural;
  }
}

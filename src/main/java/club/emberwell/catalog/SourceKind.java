package club.emberwell.catalog;

import club.emberwell.remark.Coded;
import com.fasterxml.jackson.annotation.JsonProperty;

/** What kind of thing says something about a hazard. */
public enum SourceKind implements Coded {
  @JsonProperty("university")
  UNIVERSITY("university", "a university's laser policy or list"),
  @JsonProperty("maker-space")
  MAKER_SPACE("maker-space", "a maker space's or library's list"),
  /** Several of the two above that say the same. */
  @JsonProperty("lists")
  LISTS("lists", "lists of universities and maker spaces"),
  @JsonProperty("authority")
  AUTHORITY("authority", "an authority's rule, limit or list"),
  @JsonProperty("standard")
  STANDARD("standard", "a standard"),
  @JsonProperty("study")
  STUDY("study", "a study"),
  @JsonProperty("trade")
  TRADE("trade", "a supplier's or trade text"),
  @JsonProperty("data-sheet")
  DATA_SHEET("data-sheet", "a safety data sheet"),
  @JsonProperty("practice")
  PRACTICE("practice", "common practice, no source"),
  @JsonProperty("judgement")
  JUDGEMENT("judgement", "our own conclusion");

  private final String code;
  private final String label;

  SourceKind(String code, String label) {
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

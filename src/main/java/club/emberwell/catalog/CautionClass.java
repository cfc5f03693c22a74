package club.emberwell.catalog;

import club.emberwell.remark.Coded;
import com.fasterxml.jackson.annotation.JsonProperty;

/** How much a caution weighs. None of them ever says that something is safe. */
public enum CautionClass implements Coded {
  /** Takes no settings. */
  @JsonProperty("ban")
  BAN("ban", "Prohibited"),
  /** Needs special care or further evidence. */
  @JsonProperty("care")
  CARE("care", "Special care"),
  /** What everybody who works with it should know. */
  @JsonProperty("note")
  NOTE("note", "Note");

  private final String code;
  private final String label;

  CautionClass(String code, String label) {
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

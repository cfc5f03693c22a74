package club.emberwell.catalog;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * One caution as data: a hazard of a material, a coating or a way of working, with its evidence.
 * Published lists contradict each other, so a material may have several.
 *
 * @param id stable, lower-case words with dashes
 * @param agent the substance or thing that harms
 * @param hazard what it does
 * @param claim what the source says, in our words
 * @param advice the usual precaution
 */
public record CautionRule(
    String id,
    @JsonProperty("class") CautionClass weight,
    CautionScope scope,
    String agent,
    String hazard,
    String claim,
    String advice,
    CautionEvidence evidence,
    List<ExposureLimit> limits) {
  public CautionRule {
    limits = limits == null ? List.of() : List.copyOf(limits);
  }

  @JsonIgnore
  public boolean isBan() {
    return weight == CautionClass.BAN;
  }
}

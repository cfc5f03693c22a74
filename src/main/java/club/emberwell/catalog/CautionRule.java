package club.emberwell.catalog;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import com.fasterxml.jackson.databind.annotation.JsonPOJOBuilder;
import java.util.List;

/**
 * One caution as data: a hazard of a material, a coating or a way of working, with its evidence.
 * Published lists contradict each other, so a material may have several.
 *
 * @param id stable, lower-case words with dashes
 */
@JsonDeserialize(builder = CautionRule.Flat.class)
public record CautionRule(
    String id,
    @JsonProperty("class") CautionClass weight,
    CautionScope scope,
    @JsonUnwrapped Says says,
    CautionEvidence evidence,
    List<ExposureLimit> limits) {
  public CautionRule {
    limits = limits == null ? List.of() : List.copyOf(limits);
  }

  /**
   * What it says.
   *
   * @param agent the substance or thing that harms
   * @param hazard what it does
   * @param claim what the source says, in our words
   * @param advice the usual precaution
   */
  public record Says(String agent, String hazard, String claim, String advice) {}

  /** Its JSON, which is flat; read by fields, so that an unknown one is noticed. */
  @JsonPOJOBuilder(buildMethodName = "rule", withPrefix = "")
  static final class Flat {
    @JsonProperty String id;

    @JsonProperty("class")
    CautionClass weight;

    @JsonProperty CautionScope scope;
    @JsonProperty String agent;
    @JsonProperty String hazard;
    @JsonProperty String claim;
    @JsonProperty String advice;
    @JsonProperty CautionEvidence evidence;
    @JsonProperty List<ExposureLimit> limits;

    CautionRule rule() {
      Says says = new Says(agent, hazard, claim, advice);
      return new CautionRule(id, weight, scope, says, evidence, limits);
    }
  }

  public String agent() {
    return says.agent();
  }

  public String hazard() {
    return says.hazard();
  }

  public String claim() {
    return says.claim();
  }

  public String advice() {
    return says.advice();
  }

  @JsonIgnore
  public boolean isBan() {
    return weight == CautionClass.BAN;
  }
}

package club.emberwell.catalog;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import com.fasterxml.jackson.databind.annotation.JsonPOJOBuilder;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
    @JsonUnwrapped Handling handling,
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

  /**
   * What follows at the machine.
   *
   * @param givesOff substances, each by itself; empty where nothing in particular is given off
   * @param extraction which extraction it takes; null where none is named
   * @param never what not to do
   * @param findOut how to learn what one has; empty where that is known
   */
  public record Handling(
      List<String> givesOff,
      @Nullable String extraction,
      List<String> never,
      List<String> findOut) {
    /** Of a caution whose author said no more. */
    public static final Handling NOT_SAID = new Handling(null, null, null, null);

    public Handling {
      givesOff = givesOff == null ? List.of() : List.copyOf(givesOff);
      never = never == null ? List.of() : List.copyOf(never);
      findOut = findOut == null ? List.of() : List.copyOf(findOut);
    }
  }

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
    @JsonProperty List<String> givesOff;
    @JsonProperty String extraction;
    @JsonProperty List<String> never;
    @JsonProperty List<String> findOut;
    @JsonProperty CautionEvidence evidence;
    @JsonProperty List<ExposureLimit> limits;

    CautionRule rule() {
      Says says = new Says(agent, hazard, claim, advice);
      Handling handling = new Handling(givesOff, extraction, never, findOut);
      return new CautionRule(id, weight, scope, says, handling, evidence, limits);
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

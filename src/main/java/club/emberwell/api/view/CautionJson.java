package club.emberwell.api.view;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionEvidence;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.Term;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A caution with its evidence. None of them ever says that something is safe.
 *
 * @param because what it goes with; null for a general one
 * @param card where the hazard card of that is read; null where it has none
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CautionJson(
    String id,
    @JsonProperty("class") CautionClass weight,
    @Nullable String because,
    @Nullable String card,
    @JsonUnwrapped Harm harm,
    Evidence evidence,
    List<ExposureLimit> limits) {

  /** What harms, how, and the usual precaution. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Harm(String agent, String hazard, String claim, String advice) {}

  /** Why it is believed. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Evidence(
      String source,
      String jurisdiction,
      String confidence,
      boolean disputed,
      @Nullable String dispute) {
    static Evidence of(CautionEvidence e) {
      return new Evidence(e.source(), e.jurisdiction(), e.confidence(), e.disputed(), e.dispute());
    }
  }

  /** Where a term's hazard card is read. */
  static String card(Term term) {
    return "/api/v1/" + term.kind().code() + "s/" + term.slug() + "/hazards";
  }

  public static CautionJson of(Caution caution) {
    CautionRule rule = caution.rule();
    return new CautionJson(
        rule.id(),
        rule.weight(),
        caution.about().orElse(null),
        caution.because().map(CautionJson::card).orElse(null),
        new Harm(rule.agent(), rule.hazard(), rule.claim(), rule.advice()),
        Evidence.of(rule.evidence()),
        rule.limits());
  }
}

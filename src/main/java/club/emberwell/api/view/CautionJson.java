package club.emberwell.api.view;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionEvidence;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.Term;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * A caution with its evidence. None of them ever says that something is safe.
 *
 * @param because what it goes with; null for a general one
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CautionJson(
    String id,
    @JsonProperty("class") String weight,
    String because,
    String agent,
    String hazard,
    String claim,
    String advice,
    String source,
    String jurisdiction,
    String confidence,
    boolean disputed,
    String dispute,
    List<ExposureLimit> limits) {
  public static CautionJson of(Caution caution) {
    CautionRule rule = caution.rule();
    CautionEvidence evidence = rule.evidence();
    return new CautionJson(
        rule.id(),
        rule.weight().code(),
        caution.because().map(Term::label).orElse(null),
        rule.agent(),
        rule.hazard(),
        rule.claim(),
        rule.advice(),
        evidence.source(),
        evidence.jurisdiction(),
        evidence.confidence(),
        evidence.disputed(),
        evidence.dispute(),
        rule.limits());
  }
}

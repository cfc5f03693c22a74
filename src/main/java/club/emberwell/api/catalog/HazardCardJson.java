package club.emberwell.api.catalog;

import club.emberwell.api.view.CautionJson;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionScope;
import club.emberwell.catalog.CautionSource;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.HazardCard;
import club.emberwell.catalog.HazardCard.Verdict;
import club.emberwell.catalog.TermKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * All that is known against working a material or coating, and who says so. What it does not hold
 * it does not call harmless: the supplier's safety data sheet and local rules come first.
 *
 * @param value its code in the vocabulary
 * @param givesOff substances it gives off
 * @param limits for air at work
 * @param cautions its own, heaviest first
 */
@Schema(name = "HazardCard")
record HazardCardJson(
    TermKind kind,
    String value,
    String label,
    @JsonUnwrapped Handling handling,
    List<Given> givesOff,
    List<ExposureLimit> limits,
    List<Statement> cautions) {

  /**
   * What follows at the machine.
   *
   * @param verdict whether it may be burned here at all
   * @param says the same in words
   * @param extraction which extraction it takes; empty where it is not to be worked
   * @param never what not to do
   * @param findOut how to learn what one has
   */
  record Handling(
      Verdict verdict,
      String says,
      List<String> extraction,
      List<String> never,
      List<String> findOut) {}

  /**
   * A substance.
   *
   * @param caution id of the one that says so
   */
  @Schema(name = "GivenOff")
  record Given(String substance, String caution) {}

  /**
   * A caution with its circumstances and with its sources one by one.
   *
   * @param sources who says it; several with {@code says} are the sides where they disagree
   */
  @Schema(name = "HazardStatement")
  record Statement(@JsonUnwrapped CautionJson caution, Only only, List<CautionSource> sources) {}

  /** Under what circumstances it holds; an empty list limits nothing. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "HazardCircumstances")
  record Only(List<String> processes, List<String> sources, @Nullable Double thicknessAboveMm) {
    static Only of(CautionScope scope) {
      return new Only(scope.processes(), scope.sources(), scope.thicknessAboveMm());
    }
  }

  static HazardCardJson of(HazardCard card) {
    return new HazardCardJson(
        card.term().kind(),
        card.term().slug(),
        card.term().label(),
        new Handling(
            card.verdict(),
            card.verdict().label(),
            card.extraction(),
            card.never(),
            card.findOut()),
        card.givesOff().stream()
            .map(given -> new Given(given.substance(), given.caution().rule().id()))
            .toList(),
        card.limits(),
        card.cautions().stream().map(HazardCardJson::statement).toList());
  }

  private static Statement statement(Caution caution) {
    return new Statement(
        CautionJson.of(caution),
        Only.of(caution.rule().scope()),
        caution.rule().evidence().sources());
  }
}

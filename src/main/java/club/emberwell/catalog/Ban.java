package club.emberwell.catalog;

/**
 * Why some work takes no settings.
 *
 * @param subject label of the material or coating that is prohibited
 * @param sentence all of it in words for a person, with hazard, agent and source
 */
public record Ban(
    String ruleId, String subject, String hazard, String agent, String source, String sentence) {
  static Ban of(Caution caution) {
    CautionRule rule = caution.rule();
    String subject = caution.about().orElse("this work");
    String sentence =
        "We do not share settings for %s. Reason: %s (%s). Source: %s."
            .formatted(subject, rule.hazard(), rule.agent(), rule.evidence().source());
    return new Ban(
        rule.id(), subject, rule.hazard(), rule.agent(), rule.evidence().source(), sentence);
  }
}

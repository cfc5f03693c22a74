package club.emberwell.web.material;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionEvidence;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionSource;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.HazardCard;
import club.emberwell.catalog.HazardCard.Verdict;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.web.caution.CautionView;
import club.emberwell.web.caution.TermLink;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A hazard card as it stands on its page.
 *
 * @param first what the first screen says
 * @param given what it gives off, who says so
 * @param disputes on what sources disagree
 * @param statements each caution with its sources
 * @param limits for air at work
 */
record HazardView(
    TermLink term,
    First first,
    List<Given> given,
    List<Dispute> disputes,
    List<Statement> statements,
    List<ExposureLimit> limits) {

  /**
   * Whether it may be burned at all, with which extraction, and what not to do.
   *
   * @param boxClass style class of its box
   * @param hazards what harms, the heaviest first
   */
  record First(
      String boxClass,
      String verdict,
      List<String> hazards,
      List<String> extraction,
      List<String> never,
      List<String> findOut) {}

  /**
   * Substances, and who says that they are given off.
   *
   * @param substances all that the same source says under the same circumstances
   * @param only under what circumstances, or empty
   */
  record Given(String substances, Said said) {}

  /** Who says it, of what, and how sure we are that they do. */
  record Said(String only, String source, String where, String sure) {}

  /**
   * What sources disagree on.
   *
   * @param hazard of all cautions with the same sides
   * @param sides who says what
   */
  record Dispute(String hazard, String dispute, List<Cited> sides) {}

  /**
   * A caution.
   *
   * @param only under what circumstances, or empty
   * @param again whether its sources are those of the caution before it
   */
  record Statement(
      String hazard,
      String only,
      CautionRule rule,
      List<Cited> sources,
      boolean again,
      String where,
      String sure) {}

  /**
   * A source.
   *
   * @param kind what kind of thing it is, in words
   * @param says what it says by itself, or null
   */
  record Cited(String name, String kind, String where, String says) {
    static Cited of(CautionSource source) {
      String kind = source.kind().label();
      return new Cited(
          source.name(),
          kind.equals(source.name()) ? "" : kind,
          CautionView.where(source.jurisdiction()),
          source.says());
    }
  }

  static HazardView of(HazardCard card, UnitPreferences reader) {
    return new HazardView(
        TermLink.of(card.term()),
        new First(
            box(card.verdict()),
            card.verdict().label(),
            hazards(card, reader),
            card.extraction(),
            card.never(),
            card.findOut()),
        given(card.givesOff(), reader),
        disputes(card.disputed()),
        statements(card.cautions(), reader),
        card.limits().stream().map(CautionView::printed).toList());
  }

  private static String box(Verdict verdict) {
    return CautionView.box(
        switch (verdict) {
          case UNTIL_IDENTIFIED, PROHIBITED, PARTLY_PROHIBITED -> CautionClass.BAN;
          case SPECIAL_CARE -> CautionClass.CARE;
          case GENERAL_CARE, NO_CAUTION -> CautionClass.NOTE;
        });
  }

  /** Those of the heaviest class alone: the rest stands below. */
  private static List<String> hazards(HazardCard card, UnitPreferences reader) {
    return card.cautions().stream()
        .filter(c -> c.rule().weight() == card.cautions().get(0).rule().weight())
        .map(
            c -> {
              String only = CautionView.only(c.rule().scope(), reader);
              return CautionView.capital(c.rule().hazard())
                  + (only.isEmpty() ? "." : " (" + only.toLowerCase(Locale.ROOT) + ").");
            })
        .toList();
  }

  private static List<Given> given(List<HazardCard.Given> all, UnitPreferences reader) {
    Map<Said, String> substances = new LinkedHashMap<>();
    all.forEach(
        given ->
            substances.merge(
                said(given.caution().rule(), reader),
                given.substance(),
                (one, other) -> one + ", " + other));
    return substances.entrySet().stream()
        .map(one -> new Given(one.getValue(), one.getKey()))
        .toList();
  }

  private static Said said(CautionRule rule, UnitPreferences reader) {
    return new Said(
        CautionView.only(rule.scope(), reader),
        rule.evidence().source(),
        CautionView.where(rule.evidence().jurisdiction()),
        CautionView.sure(rule.evidence().confidence()));
  }

  /** Each dispute once, with all that it is about. */
  private static List<Dispute> disputes(List<Caution> disputed) {
    Map<CautionEvidence, String> hazards = new LinkedHashMap<>();
    disputed.forEach(
        caution ->
            hazards.merge(
                caution.rule().evidence(),
                CautionView.capital(caution.rule().hazard()),
                (one, other) -> one + ". " + other));
    return hazards.entrySet().stream()
        .map(
            one ->
                new Dispute(
                    one.getValue(),
                    one.getKey().dispute(),
                    one.getKey().sides().stream().map(Cited::of).toList()))
        .toList();
  }

  private static List<Statement> statements(List<Caution> cautions, UnitPreferences reader) {
    List<Statement> all = new ArrayList<>();
    CautionEvidence before = null;
    for (Caution caution : cautions) {
      all.add(statement(caution.rule(), before, reader));
      before = caution.rule().evidence();
    }
    return all;
  }

  private static Statement statement(
      CautionRule rule, CautionEvidence before, UnitPreferences reader) {
    CautionEvidence evidence = rule.evidence();
    return new Statement(
        CautionView.capital(rule.hazard()),
        CautionView.only(rule.scope(), reader),
        rule,
        evidence.sources().stream().map(Cited::of).toList(),
        evidence.equals(before),
        CautionView.where(evidence.jurisdiction()),
        CautionView.sure(evidence.confidence()));
  }

  /** What it says to those who see no more of it. */
  String getDescription() {
    return "Hazard card of %s. %s. %s"
        .formatted(term.label(), first.verdict(), String.join(" ", first.hazards()));
  }
}

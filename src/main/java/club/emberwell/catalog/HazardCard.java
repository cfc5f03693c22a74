package club.emberwell.catalog;

import club.emberwell.remark.Coded;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/**
 * All that is known against working one material or coating, and who says so. What it does not hold
 * it does not call harmless.
 *
 * @param term the material or coating
 * @param verdict whether it may be burned here at all
 * @param cautions its own, heaviest first
 * @param extraction which extraction it takes; empty where it is not to be worked
 * @param never what not to do
 * @param findOut how to learn what one has; empty where its name says it
 */
public record HazardCard(
    Term term,
    Verdict verdict,
    List<Caution> cautions,
    List<String> extraction,
    List<String> never,
    List<String> findOut) {

  /** Whether it may be burned here, the gravest first. None of them says that it does no harm. */
  public enum Verdict implements Coded {
    UNTIL_IDENTIFIED("prohibited-until-identified", "Prohibited until you know what it is"),
    PROHIBITED("prohibited", "Prohibited: do not work it with a laser"),
    PARTLY_PROHIBITED("partly-prohibited", "Prohibited for some work"),
    SPECIAL_CARE("special-care", "Only with special care"),
    GENERAL_CARE("general-care", "Only with the care that every job needs"),
    NO_CAUTION("no-caution", "We have no caution for it, which does not mean it is safe");

    private final String code;
    private final String label;

    Verdict(String code, String label) {
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

  /**
   * One substance it gives off.
   *
   * @param caution that says so
   */
  public record Given(String substance, Caution caution) {}

  public static HazardCard of(Catalog catalog, Term term) {
    List<Caution> own = catalog.cautions().forTerm(term.kind(), term.slug());
    Verdict verdict = verdict(own);
    boolean workable = verdict.compareTo(Verdict.PROHIBITED) > 0;
    List<CautionRule> general =
        catalog.cautions().rules().stream()
            .filter(rule -> rule.scope().goesWithAll() && rule.scope().sources().isEmpty())
            .toList();
    List<CautionRule> mine = own.stream().map(Caution::rule).toList();
    Set<String> extraction = extraction(mine);
    if (extraction.isEmpty()) {
      extraction = extraction(general);
    }
    return new HazardCard(
        term,
        verdict,
        own,
        workable ? List.copyOf(extraction) : List.of(),
        never(workable ? Stream.concat(mine.stream(), general.stream()) : mine.stream()),
        mine.stream().flatMap(rule -> rule.handling().findOut().stream()).distinct().toList());
  }

  private static Set<String> extraction(List<CautionRule> rules) {
    Set<String> said = new LinkedHashSet<>();
    rules.stream()
        .map(rule -> rule.handling().extraction())
        .filter(Objects::nonNull)
        .forEach(said::add);
    return said;
  }

  private static List<String> never(Stream<CautionRule> rules) {
    return rules.flatMap(rule -> rule.handling().never().stream()).distinct().toList();
  }

  private static Verdict verdict(List<Caution> own) {
    if (own.isEmpty()) {
      return Verdict.NO_CAUTION;
    }
    return own.stream()
        .map(Caution::rule)
        .map(HazardCard::verdict)
        .min(Verdict::compareTo)
        .orElseThrow();
  }

  private static Verdict verdict(CautionRule rule) {
    return switch (rule.weight()) {
      case BAN -> {
        if (!rule.handling().findOut().isEmpty() && rule.scope().exactly()) {
          yield Verdict.UNTIL_IDENTIFIED;
        }
        yield rule.scope().narrows() ? Verdict.PARTLY_PROHIBITED : Verdict.PROHIBITED;
      }
      case CARE -> Verdict.SPECIAL_CARE;
      case NOTE -> Verdict.GENERAL_CARE;
    };
  }

  /** Substances, each with the heaviest caution that names it. */
  public List<Given> givesOff() {
    Set<String> told = new LinkedHashSet<>();
    List<Given> given = new ArrayList<>();
    for (Caution caution : cautions) {
      for (String substance : caution.rule().handling().givesOff()) {
        if (told.add(substance)) {
          given.add(new Given(substance, caution));
        }
      }
    }
    return given;
  }

  /** Limits for air at work, each once. */
  public List<ExposureLimit> limits() {
    return cautions.stream().flatMap(c -> c.rule().limits().stream()).distinct().toList();
  }

  /** Those on which published sources contradict each other. */
  public List<Caution> disputed() {
    return cautions.stream().filter(c -> c.rule().evidence().disputed()).toList();
  }
}

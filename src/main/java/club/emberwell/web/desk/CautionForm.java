package club.emberwell.web.desk;

import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionEvidence;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionScope;
import club.emberwell.catalog.CautionSource;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.desk.DeskLimits;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The form of a caution: from a rule to what is typed, and back. */
final class CautionForm {
  private static final List<String> LONG =
      List.of(
          "agent",
          "hazard",
          "claim",
          "advice",
          "givesOff",
          "never",
          "findOut",
          "evidence.source",
          "evidence.dispute",
          "reason");
  private static final List<String> BY_LINE = List.of("givesOff", "never", "findOut");
  private static final Map<String, String> LABELS = new LinkedHashMap<>();

  static {
    LABELS.put("id", "Id (in links)");
    LABELS.put("class", "Class");
    LABELS.put("agent", "What harms (substance)");
    LABELS.put("hazard", "What it does (hazard)");
    LABELS.put("claim", "What the source says");
    LABELS.put("advice", "What to do (advice)");
    LABELS.put("givesOff", "Substances it gives off");
    LABELS.put("extraction", "Which extraction it takes");
    LABELS.put("never", "What not to do");
    LABELS.put("findOut", "How to find out what it is");
    LABELS.put("scope.materials", "Materials");
    LABELS.put("scope.coatings", "Coatings");
    LABELS.put("scope.processes", "Processes");
    LABELS.put("scope.sources", "Types of laser");
    LABELS.put("scope.thicknessAboveMm", "Only above this thickness, mm");
    LABELS.put("evidence.source", "Source");
    LABELS.put("evidence.jurisdiction", "Where it applies");
    LABELS.put("evidence.confidence", "How sure it is");
    LABELS.put("evidence.disputed", "Do sources disagree?");
    LABELS.put("evidence.dispute", "Which source says what");
    LABELS.put("reason", "Reason");
  }

  private CautionForm() {}

  /**
   * The blank form.
   *
   * @param fresh whether the caution is to have an id yet
   */
  static Form form(boolean fresh) {
    Form form = new Form();
    LABELS.forEach(
        (name, label) -> {
          if (fresh || !name.equals("id")) {
            form.add(field(name, label));
          }
        });
    return form;
  }

  private static Field field(String name, String label) {
    Field field = Field.of(name, label);
    switch (name) {
      case "class" -> field.folded().choices(CautionClass.values(), CautionClass::label);
      case "evidence.confidence" ->
          field
              .folded()
              .choice("read", "We read the source")
              .choice("second-hand", "Quoted elsewhere")
              .choice("memory", "From memory")
              .choice("judgement", "Our own conclusion");
      case "evidence.disputed" -> field.folded().choice("no", "No").choice("yes", "Yes");
      case "scope.materials", "scope.coatings", "scope.processes", "scope.sources" ->
          field.hint("Separate with commas. Empty = all.").maxLength(2000).lines();
      case "id" ->
          field.hint("Lower-case words with dashes. Empty = made from the hazard.").maxLength(60);
      default -> {
        if (LONG.contains(name)) {
          field.maxLength(DeskLimits.REASON).lines();
        } else {
          field.maxLength(120);
        }
        if (BY_LINE.contains(name)) {
          field.hint("One to a line.");
        }
      }
    }
    boolean optional =
        name.startsWith("scope.")
            || BY_LINE.contains(name)
            || List.of("extraction", "evidence.dispute", "id").contains(name);
    if (!optional) {
      field.required();
    }
    return name.equals("reason") ? field.aside() : field;
  }

  /** What a rule looks like in the form. */
  static Map<String, String> values(CautionRule rule) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("id", rule.id());
    values.put("class", rule.weight().code());
    values.put("agent", rule.agent());
    values.put("hazard", rule.hazard());
    values.put("claim", rule.claim());
    values.put("advice", rule.advice());
    values.put("givesOff", String.join("\n", rule.handling().givesOff()));
    values.put(
        "extraction", rule.handling().extraction() == null ? "" : rule.handling().extraction());
    values.put("never", String.join("\n", rule.handling().never()));
    values.put("findOut", String.join("\n", rule.handling().findOut()));
    values.put("scope.materials", String.join(", ", rule.scope().materials()));
    values.put("scope.coatings", String.join(", ", rule.scope().coatings()));
    values.put("scope.processes", String.join(", ", rule.scope().processes()));
    values.put("scope.sources", String.join(", ", rule.scope().sources()));
    Double above = rule.scope().thicknessAboveMm();
    values.put("scope.thicknessAboveMm", above == null ? "" : above.toString());
    CautionEvidence evidence = rule.evidence();
    values.put("evidence.source", evidence.source());
    values.put("evidence.jurisdiction", evidence.jurisdiction());
    values.put("evidence.confidence", evidence.confidence());
    values.put("evidence.disputed", evidence.disputed() ? "yes" : "no");
    values.put("evidence.dispute", evidence.dispute() == null ? "" : evidence.dispute());
    return values;
  }

  /**
   * What was typed as a rule.
   *
   * @param words by which materials and coatings may be named
   * @param was the caution it changes, or null; its limits of exposure stay
   */
  static CautionRule rule(SentForm sent, CautionRule was, Vocabulary words) {
    Map<String, String> v = new LinkedHashMap<>();
    LABELS.keySet().forEach(name -> v.put(name, sent.values().getOrDefault(name, "")));
    boolean disputed = v.get("evidence.disputed").equals("yes");
    return new CautionRule(
        was == null ? id(v) : was.id(),
        Stream.of(CautionClass.values())
            .filter(c -> c.code().equals(v.get("class")))
            .findFirst()
            .orElse(null),
        new CautionScope(
            terms(v.get("scope.materials"), TermKind.MATERIAL, words),
            terms(v.get("scope.coatings"), TermKind.COATING, words),
            was != null && was.scope().exactly(),
            was == null ? null : was.scope().unlisted(),
            list(v.get("scope.processes")),
            list(v.get("scope.sources")),
            number(v.get("scope.thicknessAboveMm"))),
        new CautionRule.Says(v.get("agent"), v.get("hazard"), v.get("claim"), v.get("advice")),
        new CautionRule.Handling(
            lines(v.get("givesOff")),
            v.get("extraction").isBlank() ? null : v.get("extraction"),
            lines(v.get("never")),
            lines(v.get("findOut"))),
        new CautionEvidence(
            v.get("evidence.source"),
            v.get("evidence.jurisdiction"),
            v.get("evidence.confidence"),
            disputed,
            disputed ? v.get("evidence.dispute") : null,
            sources(v.get("evidence.source"), was)),
        was == null ? List.of() : was.limits());
  }

  private static String id(Map<String, String> v) {
    return v.get("id").isEmpty() ? Slugs.of(v.get("hazard")) : v.get("id");
  }

  /** What no term is called stays as typed, to be refused by name. */
  private static List<String> terms(String typed, TermKind kind, Vocabulary words) {
    return Arrays.stream(typed.split("[,;\\n]+"))
        .map(String::strip)
        .filter(text -> !text.isEmpty())
        .map(text -> words.resolve(kind, text).term().map(Term::slug).orElse(text))
        .toList();
  }

  /** One by one as they were, unless somebody wrote other sources. */
  private static List<CautionSource> sources(String typed, CautionRule was) {
    return was != null && was.evidence().source().equals(typed)
        ? was.evidence().sources()
        : List.of();
  }

  private static List<String> lines(String typed) {
    return typed.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
  }

  private static List<String> list(String typed) {
    return Arrays.stream(typed.split("[,;\\s]+")).filter(s -> !s.isEmpty()).toList();
  }

  private static Double number(String typed) {
    if (typed.isEmpty()) {
      return null;
    }
    try {
      return Double.valueOf(typed.replace(',', '.'));
    } catch (NumberFormatException e) {
      throw new EntryRefused(
          RemarkId.NUMBER_UNREADABLE, "/scope/thicknessAboveMm", "Write a number.");
    }
  }
}

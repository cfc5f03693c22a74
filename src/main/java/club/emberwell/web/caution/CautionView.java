package club.emberwell.web.caution;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionScope;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A caution as it stands on a page: a title, what to do, and a fold with the rest.
 *
 * @param boxClass style class of its box, one for each class of cautions
 * @param advice what to do
 * @param about the terms it applies to
 * @param card the hazard card of what is in hand; null for what has none
 * @param only under what circumstances, or empty
 * @param source where it is published, how sure that is, and where it applies
 */
public record CautionView(
    String boxClass,
    String title,
    String advice,
    List<TermLink> about,
    @Nullable TermLink card,
    String only,
    CautionRule rule,
    Source source) {

  /** Why it is believed, in words. */
  public record Source(String text, String sure, String where) {}

  public static CautionView of(Caution caution, Vocabulary vocabulary, UnitPreferences reader) {
    CautionRule rule = caution.rule();
    CautionScope scope = rule.scope();
    String only = only(scope, reader);
    return new CautionView(
        box(rule.weight()),
        title(caution, only),
        rule.isBan() ? capital(rule.hazard()) + ". " + rule.advice() : rule.advice(),
        Stream.concat(
                scope.materials().stream().map(s -> vocabulary.successor(TermKind.MATERIAL, s)),
                scope.coatings().stream().map(s -> vocabulary.successor(TermKind.COATING, s)))
            .flatMap(Optional::stream)
            .map(TermLink::of)
            .toList(),
        caution.because().map(term -> new TermLink(TermLink.card(term), term.label())).orElse(null),
        only,
        rule,
        new Source(
            rule.evidence().source(),
            sure(rule.evidence().confidence()),
            where(rule.evidence().jurisdiction())));
  }

  /** As printed beside it. */
  public List<ExposureLimit> limits() {
    return rule.limits().stream().map(CautionView::printed).toList();
  }

  public boolean ban() {
    return rule.isBan();
  }

  private static String title(Caution caution, String only) {
    Optional<String> about = caution.about();
    if (caution.unlisted() != null) {
      return "“"
          + caution.unlisted()
          + "” is not in our list: do not burn it until you know what it is";
    }
    if (caution.rule().isBan()) {
      return "We do not share settings for "
          + about.orElse("this work")
          + (only.isEmpty() ? "" : " (" + only.toLowerCase(Locale.ROOT) + ")");
    }
    return about
        .map(label -> label + ": " + caution.rule().hazard())
        .orElseGet(() -> capital(caution.rule().hazard()));
  }

  /** A sentence that begins with this. */
  public static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** Style class of a box by its class. */
  public static String box(CautionClass weight) {
    return switch (weight) {
      case BAN -> "box-danger";
      case CARE -> "box-warn";
      case NOTE -> "box-note";
    };
  }

  /** Under what circumstances a caution holds, in words; empty where it always does. */
  public static String only(CautionScope scope, UnitPreferences reader) {
    List<String> parts = new ArrayList<>();
    if (!scope.processes().isEmpty()) {
      parts.add(
          scope.processes().stream()
              .map(code -> Process.of(code).map(Process::label).orElse(code))
              .collect(Collectors.joining(", ")));
    }
    if (!scope.sources().isEmpty()) {
      parts.add(
          scope.sources().stream()
              .map(code -> LaserSource.of(code).map(LaserSource::label).orElse(code))
              .collect(Collectors.joining(", ", "", " sources")));
    }
    if (scope.thicknessAboveMm() != null) {
      parts.add(
          "thicker than "
              + QuantityPrinter.print(scope.thicknessAboveMm(), QuantityKind.THICKNESS, reader));
    }
    return String.join("; ", parts);
  }

  /** How sure it is, in words. */
  public static String sure(String confidence) {
    return switch (confidence) {
      case "read" -> "we read the source";
      case "second-hand" -> "quoted elsewhere; we did not read the source itself";
      case "memory" -> "from memory; look it up before you rely on it";
      default -> "our own conclusion";
    };
  }

  /** Where a rule or list applies, in words. */
  public static String where(String jurisdiction) {
    return jurisdiction.replaceFirst("^general", "everywhere");
  }

  /** Files and the API write units without the signs that pages have. */
  public static ExposureLimit printed(ExposureLimit limit) {
    String value = limit.value().replace("ug/", "µg/").replaceAll("/m3\\b", "/m³");
    return new ExposureLimit(
        limit.agent(),
        value,
        limit.basis(),
        limit.authority(),
        limit.jurisdiction(),
        limit.year(),
        limit.check());
  }
}

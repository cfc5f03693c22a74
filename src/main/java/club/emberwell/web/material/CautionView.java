package club.emberwell.web.material;

import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionScope;
import club.emberwell.catalog.ExposureLimit;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A caution as it stands on a page.
 *
 * @param weight its class in words
 * @param boxClass style class of its box
 * @param about the terms it is said of
 * @param only under what circumstances, or empty
 * @param evidence how sure it is, in words
 */
record CautionView(
    String weight,
    String boxClass,
    boolean ban,
    List<Link> about,
    String only,
    CautionRule rule,
    String evidence,
    List<ExposureLimit> limits) {
  /** A term with its page. */
  record Link(String href, String label) {}

  static CautionView of(CautionRule rule, Vocabulary vocabulary, UnitPreferences reader) {
    CautionScope scope = rule.scope();
    List<Link> about =
        Stream.concat(
                scope.materials().stream().map(s -> vocabulary.successor(TermKind.MATERIAL, s)),
                scope.coatings().stream().map(s -> vocabulary.successor(TermKind.COATING, s)))
            .flatMap(Optional::stream)
            .map(term -> new Link(TermView.address(term), term.label()))
            .toList();
    return new CautionView(
        rule.weight().label(),
        box(rule.weight()),
        rule.isBan(),
        about,
        only(scope, reader),
        rule,
        sure(rule.evidence().confidence()),
        rule.limits());
  }

  private static String box(CautionClass weight) {
    return switch (weight) {
      case BAN -> "box-danger";
      case CARE -> "box-warn";
      case NOTE -> "box-note";
    };
  }

  private static String only(CautionScope scope, UnitPreferences reader) {
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

  private static String sure(String confidence) {
    return switch (confidence) {
      case "read" -> "the source was read";
      case "second-hand" -> "quoted elsewhere; the source itself was not read";
      case "memory" -> "from memory; look it up before you rely on it";
      default -> "our own conclusion";
    };
  }

  /** True where it is about no material and no coating, so about every work. */
  static boolean isGeneral(CautionRule rule) {
    return rule.scope().materials().isEmpty() && rule.scope().coatings().isEmpty();
  }

  /** Terms with their pages. */
  static List<Link> links(List<Term> terms) {
    return terms.stream().map(t -> new Link(TermView.address(t), t.label())).toList();
  }
}

package club.emberwell.web.trial;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was worked on, in one line. */
public final class WorkText {
  private WorkText() {}

  /**
   * "Birch plywood, 3 mm", "Stainless steel / Powder coat / Navy" or "Titanium, gold mark"; unfiled
   * words in quotes.
   */
  public static String of(ReportSnapshot report, Vocabulary vocabulary, UnitPreferences reader) {
    return of(report.work(), vocabulary, reader);
  }

  /** The same of a work by itself. */
  public static String of(Work work, Vocabulary vocabulary, UnitPreferences reader) {
    String words =
        WorkProperty.of(Shape.WORD).stream()
            .filter(property -> property != WorkProperty.RESULT_COLOUR)
            .filter(work.values()::containsKey)
            .map(property -> label(vocabulary, property, work.word(property)))
            .collect(Collectors.joining(" / "));
    Stream<String> sizes =
        WorkProperty.of(Shape.QUANTITY).stream()
            .filter(work.values()::containsKey)
            .map(p -> QuantityPrinter.print(work.number(p), p.value().kind(), reader));
    Stream<String> became =
        Stream.of(WorkProperty.RESULT_COLOUR)
            .filter(work.values()::containsKey)
            .map(p -> p.among(label(vocabulary, p, work.word(p))));
    return Stream.of(Stream.of(words), sizes, became)
        .flatMap(part -> part)
        .collect(Collectors.joining(", "));
  }

  /** One property of a work, as it stands by itself. */
  public static String of(
      Work work, WorkProperty property, Vocabulary vocabulary, UnitPreferences reader) {
    return switch (property.value().shape()) {
      case WORD -> label(vocabulary, property, work.word(property));
      case QUANTITY ->
          QuantityPrinter.print(work.number(property), property.value().kind(), reader);
      default -> work.values().get(property).toString();
    };
  }

  private static String label(Vocabulary vocabulary, WorkProperty property, Filed word) {
    return word.waits()
        ? "“" + word.written() + "”"
        : vocabulary
            .successor(property.value().vocabulary(), word.slug())
            .map(Term::label)
            .orElse(word.written());
  }
}

package club.emberwell.web.report;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** The words a form suggests while one types; anything else may be typed too. */
@ApplicationScoped
public class Words {
  private final CatalogService catalog;

  Words(CatalogService catalog) {
    this.catalog = catalog;
  }

  /** One list of labels for each vocabulary. */
  public record Lists(
      List<String> materials, List<String> coatings, List<String> colours, List<String> defects) {}

  public Lists lists() {
    Vocabulary vocabulary = catalog.snapshot().vocabulary();
    return new Lists(
        labels(vocabulary, TermKind.MATERIAL),
        labels(vocabulary, TermKind.COATING),
        labels(vocabulary, TermKind.COLOUR),
        labels(vocabulary, TermKind.DEFECT));
  }

  private static List<String> labels(Vocabulary vocabulary, TermKind kind) {
    return vocabulary.terms(kind).stream()
        .filter(term -> !term.deprecated())
        .map(Term::label)
        .sorted()
        .toList();
  }
}

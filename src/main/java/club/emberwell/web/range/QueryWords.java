package club.emberwell.web.range;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.laser.Effect;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.remark.Coded;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A search in words, for headings. */
@ApplicationScoped
public class QueryWords {
  private final CatalogService catalog;

  QueryWords(CatalogService catalog) {
    this.catalog = catalog;
  }

  public String of(SearchQuery query) {
    Vocabulary vocabulary = catalog.snapshot().vocabulary();
    List<String> parts = new ArrayList<>();
    if (!query.text().isEmpty()) {
      parts.add("“" + query.text() + "”");
    }
    query
        .facets()
        .forEach(
            (code, values) ->
                parts.add(
                    String.join(
                        " or ", values.stream().map(v -> label(vocabulary, code, v)).toList())));
    query.ranges().keySet().forEach(stem -> parts.add(stem + " limited"));
    return parts.isEmpty() ? "Everything" : String.join(", ", parts);
  }

  private static String label(Vocabulary vocabulary, String facet, String value) {
    return Coded.of(Facet.class, facet)
        .flatMap(Facet::vocabulary)
        .flatMap(kind -> vocabulary.successor(kind, value))
        .map(Term::label)
        .or(() -> fixed(facet, value))
        .orElse(value.replace('-', ' '));
  }

  private static Optional<String> fixed(String facet, String value) {
    return switch (Coded.of(Facet.class, facet).orElse(Facet.MEMBER)) {
      case SOURCE -> LaserSource.of(value).map(LaserSource::label);
      case PROCESS -> Process.of(value).map(Process::label);
      case EFFECT -> Effect.of(value).map(Effect::label);
      case MOTION -> Motion.of(value).map(Motion::label);
      case BAND -> WavelengthBand.of(value).map(WavelengthBand::label);
      case REGIME -> Regime.of(value).map(Regime::label);
      default -> Optional.empty();
    };
  }
}

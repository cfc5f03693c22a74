package club.emberwell.search.column;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import java.util.List;
import java.util.Map;

/** Names for the property codes of one set of columns. */
record ColumnLabels(Map<TrialColumns.Property, List<String>> names, Vocabulary vocabulary)
    implements TrialColumns.PropertyLabels {

  @Override
  public String label(TrialColumns.Property property, int code) {
    if (code < 0) {
      return "not given";
    }
    List<String> named = names.get(property);
    if (named == null) {
      return PackedCodes.label(property, code);
    }
    String value = named.get(code);
    return switch (property) {
      case MATERIAL -> term(TermKind.MATERIAL, value);
      case COATING -> term(TermKind.COATING, value);
      case COLOUR -> term(TermKind.COLOUR, value);
      case LENS -> value + " mm";
      default -> value;
    };
  }

  @Override
  public String value(TrialColumns.Property property, int code) {
    List<String> named = names.get(property);
    return code < 0 || named == null ? label(property, code) : named.get(code);
  }

  private String term(TermKind kind, String slug) {
    return vocabulary.term(kind, slug).map(Term::label).orElse(slug);
  }
}

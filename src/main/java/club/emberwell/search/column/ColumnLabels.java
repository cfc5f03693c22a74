package club.emberwell.search.column;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Property;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Names for the property codes of one set of columns. */
record ColumnLabels(Map<Property, List<String>> names, Vocabulary vocabulary)
    implements TrialColumns.PropertyLabels {
  @Override
  public String label(Property property, int code) {
    if (code < 0) {
      return "not given";
    }
    List<String> named = names.get(property);
    if (named == null) {
      return PackedCodes.label(property, code);
    }
    String value = named.get(code);
    if (property == Property.LENS) {
      return value + " mm";
    }
    if (property == Property.THICKNESS_CLASS) {
      return ThicknessClass.of(value).map(ThicknessClass::label).orElse(value);
    }
    return Optional.ofNullable(Property.WORK.get(property))
        .flatMap(Facet::vocabulary)
        .map(kind -> term(kind, value))
        .orElse(value);
  }

  @Override
  public String value(Property property, int code) {
    List<String> named = names.get(property);
    return code < 0 || named == null ? label(property, code) : named.get(code);
  }

  @Override
  public TrialColumns.Named alike(Property property, int code) {
    String value = value(property, code);
    return Optional.ofNullable(Property.WORK.get(property))
        .flatMap(Facet::vocabulary)
        .map(kind -> alike(kind, value))
        .orElseGet(() -> new TrialColumns.Named(value, label(property, code)));
  }

  @Override
  public TrialColumns.PropertyLabels counting(Vocabulary other) {
    return new ColumnLabels(names, other);
  }

  private TrialColumns.Named alike(TermKind kind, String slug) {
    String counted = vocabulary.respondsAs(kind, slug);
    return new TrialColumns.Named(counted, term(kind, counted));
  }

  private String term(TermKind kind, String slug) {
    return vocabulary.term(kind, slug).map(Term::label).orElse(slug);
  }
}

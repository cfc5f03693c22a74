package club.emberwell.web.material;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Folding;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.web.caution.TermLink;
import club.emberwell.web.material.ReportCounts.Counts;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The terms of a kind as branches, narrowed to what a text names. */
final class TermTree {
  private static final int DEEPEST_STYLE = 3;

  private final Catalog catalog;
  private final TermKind kind;
  private final Counts counts;
  private final String wanted;
  private final Set<String> kept = new HashSet<>();

  private TermTree(Catalog catalog, TermKind kind, Counts counts, String text) {
    this.catalog = catalog;
    this.kind = kind;
    this.counts = counts;
    this.wanted = catalog.vocabulary().folding().fold(text);
    keep();
  }

  /**
   * One line of a branch.
   *
   * @param depth 0 at the top, for its indent
   * @param spelling the synonym through which a filter found it, or null
   * @param ban true where it takes no settings
   */
  record Row(
      String href,
      String label,
      int depth,
      String spelling,
      boolean ban,
      boolean care,
      int reports,
      String hex) {}

  /**
   * A term of the top with everything below it that fits.
   *
   * @param rows the top itself first
   */
  record Branch(Row top, List<Row> rows) {}

  static List<Branch> of(Catalog catalog, TermKind kind, Counts counts, String text) {
    return new TermTree(catalog, kind, counts, text).branches();
  }

  // A term stays with everything above it, so that its place is seen, and everything below it.
  private void keep() {
    Vocabulary vocabulary = catalog.vocabulary();
    for (Term term : vocabulary.terms(kind)) {
      if (fits(term)) {
        vocabulary.path(kind, term.slug()).forEach(above -> kept.add(above.slug()));
        kept.addAll(vocabulary.descendants(kind, term.slug()));
      }
    }
  }

  private boolean fits(Term term) {
    return wanted.isEmpty() || folded(term.label()).contains(wanted) || spelling(term).isPresent();
  }

  private Optional<String> spelling(Term term) {
    if (wanted.isEmpty() || folded(term.label()).contains(wanted)) {
      return Optional.empty();
    }
    return term.synonyms().stream().filter(s -> folded(s).contains(wanted)).findFirst();
  }

  private String folded(String text) {
    Folding folding = catalog.vocabulary().folding();
    return folding.fold(text);
  }

  private List<Branch> branches() {
    List<Branch> branches = new ArrayList<>();
    for (Term top : catalog.vocabulary().children(kind, null)) {
      if (kept.contains(top.slug())) {
        List<Row> rows = new ArrayList<>();
        add(rows, top, 0);
        branches.add(new Branch(rows.get(0), rows));
      }
    }
    return branches;
  }

  private void add(List<Row> rows, Term term, int depth) {
    if (!kept.contains(term.slug())) {
      return;
    }
    rows.add(row(term, depth));
    catalog
        .vocabulary()
        .children(kind, term.slug())
        .forEach(child -> add(rows, child, Math.min(depth + 1, DEEPEST_STYLE)));
  }

  private Row row(Term term, int depth) {
    var cautions = catalog.cautions().forTerm(kind, term.slug());
    return new Row(
        TermLink.address(term),
        term.label(),
        depth,
        spelling(term).orElse(null),
        cautions.stream().anyMatch(c -> c.rule().isBan()),
        !cautions.isEmpty(),
        counts.of(kind, term.slug()),
        term.hex());
  }
}

package club.emberwell.web.material;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.UnitPreferences;
import java.util.List;

/**
 * A material or coating with all that is known of it.
 *
 * @param kind in words
 * @param path wider terms, the widest first
 * @param bans why it takes no settings; shown before anything else
 * @param cautions the others, heaviest first
 * @param reports on it and everything below it
 * @param find address of the search for it
 */
record TermView(
    String kind,
    Term term,
    List<CautionView.Link> path,
    List<CautionView.Link> children,
    List<CautionView> bans,
    List<CautionView> cautions,
    int reports,
    String find) {

  static TermView of(Catalog catalog, Term term, UnitPreferences reader, int reports) {
    Vocabulary vocabulary = catalog.vocabulary();
    List<Term> path = vocabulary.path(term.kind(), term.slug());
    List<CautionView> all =
        catalog.cautions().forTerm(term.kind(), term.slug()).stream()
            .map(caution -> CautionView.of(caution.rule(), vocabulary, reader))
            .toList();
    return new TermView(
        term.kind() == TermKind.COATING ? "Coating" : "Material",
        term,
        CautionView.links(path.subList(0, Math.max(0, path.size() - 1))),
        CautionView.links(vocabulary.children(term.kind(), term.slug())),
        all.stream().filter(CautionView::ban).toList(),
        all.stream().filter(c -> !c.ban()).toList(),
        reports,
        search(term));
  }

  /** Address of the term's own page; a colour has none and leads to the search. */
  static String address(Term term) {
    return switch (term.kind()) {
      case MATERIAL -> "/materials/" + term.slug();
      case COATING -> "/materials/coating/" + term.slug();
      default -> search(term);
    };
  }

  static String search(Term term) {
    return "/?" + term.kind().code() + "=" + term.slug();
  }
}

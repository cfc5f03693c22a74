package club.emberwell.web.material;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.web.caution.CautionView;
import club.emberwell.web.caution.TermLink;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

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
    List<TermLink> path,
    List<TermLink> children,
    List<CautionView> bans,
    List<CautionView> cautions,
    int reports,
    String find) {

  /** Address of its hazard card. */
  public String getCard() {
    return TermLink.card(term);
  }

  /** What is known of it, for those who see no more of it. */
  String getDescription() {
    if (!bans.isEmpty()) {
      return bans.get(0).title() + ": " + bans.get(0).advice();
    }
    List<String> said = new ArrayList<>();
    said.add(
        reports == 0
            ? term.label() + ": nobody has posted a result on it yet."
            : term.label()
                + ": laser settings from "
                + reports
                + (reports == 1 ? " report." : " reports."));
    said.add(
        cautions.isEmpty()
            ? "We have no caution for it, which does not mean it is safe."
            : "Cautions: "
                + cautions.stream().map(CautionView::title).collect(Collectors.joining("; "))
                + ".");
    return String.join(" ", said);
  }

  static TermView of(Catalog catalog, Term term, UnitPreferences reader, int reports) {
    Vocabulary vocabulary = catalog.vocabulary();
    List<Term> path = vocabulary.path(term.kind(), term.slug());
    List<CautionView> all =
        catalog.cautions().forTerm(term.kind(), term.slug()).stream()
            .map(caution -> CautionView.of(caution, vocabulary, reader))
            .toList();
    return new TermView(
        term.kind() == TermKind.COATING ? "Coating" : "Material",
        term,
        TermLink.all(path.subList(0, Math.max(0, path.size() - 1))),
        TermLink.all(vocabulary.children(term.kind(), term.slug())),
        all.stream().filter(CautionView::ban).toList(),
        all.stream().filter(c -> !c.ban()).toList(),
        reports,
        TermLink.search(term));
  }
}

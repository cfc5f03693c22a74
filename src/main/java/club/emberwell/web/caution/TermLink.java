package club.emberwell.web.caution;

import club.emberwell.catalog.Term;
import java.util.List;

/** A term of the vocabulary with its page. */
public record TermLink(String href, String label) {
  public static TermLink of(Term term) {
    return new TermLink(address(term), term.label());
  }

  public static List<TermLink> all(List<Term> terms) {
    return terms.stream().map(TermLink::of).toList();
  }

  /** Address of the term's own page; a colour has none and leads to the search. */
  public static String address(Term term) {
    return switch (term.kind()) {
      case MATERIAL -> "/materials/" + term.slug();
      case COATING -> "/materials/coating/" + term.slug();
      default -> search(term);
    };
  }

  /** Address of the hazard card of a material or coating. */
  public static String card(Term term) {
    return address(term) + "/hazards";
  }

  /** Address of the search for it. */
  public static String search(Term term) {
    return "/?" + term.kind().code() + "=" + term.slug();
  }
}

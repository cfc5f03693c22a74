package club.emberwell.web.find;

import club.emberwell.search.SearchResult.FacetList;
import club.emberwell.search.SearchResult.FacetValue;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.SearchQuery;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A facet as the page shows it.
 *
 * @param chosen whether something in it is chosen
 * @param open whether it stands open within its group
 * @param first the values in sight
 * @param rest what "show more" opens
 */
record FacetView(Facet facet, boolean chosen, boolean open, List<Value> first, List<Value> rest) {
  /** Values in sight before "show more". */
  static final int IN_SIGHT = 7;

  /** Values of a facet without an end (member, lot) behind "more"; words reach the others. */
  private static final int MOST_OPEN = 5;

  /** With this few branches at the top, what grows on them is in sight too. */
  private static final int FEW_ROOTS = 2;

  /** What people narrow by most; these stand open within their group. */
  private static final Set<Facet> OPEN =
      Set.of(Facet.SOURCE, Facet.MATERIAL, Facet.COATING, Facet.PROCESS);

  /** A value with the address that chooses it or takes it away. */
  record Value(String id, String label, int count, boolean selected, int depth, String href) {}

  static FacetView of(FacetList list, SearchQuery query) {
    String code = list.facet().code();
    Set<String> wanted = openBranches(list.values());
    long roots = list.values().stream().filter(v -> v.depth() == 0 && v.count() > 0).count();
    List<Value> first = new ArrayList<>();
    List<Value> rest = new ArrayList<>();
    boolean chosen = false;
    for (FacetValue value : list.values()) {
      if (!value.offered()) {
        continue;
      }
      chosen |= value.selected();
      boolean inBranch =
          value.depth() == 0 || roots <= FEW_ROOTS || wanted.contains(value.parent());
      Value view =
          new Value(
              code + "-" + value.value().replaceAll("[^A-Za-z0-9-]", "_"),
              value.label(),
              value.count(),
              value.selected(),
              Math.min(3, value.depth()),
              FindView.address(query.toggled(code, value.value())));
      if (value.selected() || inBranch && first.size() < IN_SIGHT) {
        first.add(view);
      } else if (FacetValues.isClosed(list.facet()) || rest.size() < MOST_OPEN) {
        rest.add(view);
      }
    }
    return new FacetView(list.facet(), chosen, chosen || isOpen(list.facet(), query), first, rest);
  }

  private static boolean isOpen(Facet facet, SearchQuery query) {
    return OPEN.contains(facet)
        || facet == Facet.COLOUR && query.facets().containsKey(Facet.COATING.code());
  }

  /** The chosen values and everything above them: their children are in sight. */
  private static Set<String> openBranches(List<FacetValue> values) {
    Set<String> open = new HashSet<>();
    for (int i = values.size() - 1; i >= 0; i--) {
      FacetValue value = values.get(i);
      if (value.selected() || open.contains(value.value())) {
        open.add(value.value());
        if (value.parent() != null) {
          open.add(value.parent());
        }
      }
    }
    return open;
  }

  public String getCode() {
    return facet.code();
  }

  public String getLabel() {
    return facet.label();
  }

  boolean isEmpty() {
    return first.isEmpty() && rest.isEmpty();
  }
}

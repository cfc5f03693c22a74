package club.emberwell.desk.supplier;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.catalog.Folding;
import club.emberwell.catalog.Nearness;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.desk.DeskAccess;
import club.emberwell.lot.supplier.Supplier;
import club.emberwell.lot.supplier.Suppliers;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Suppliers whose names are spelled much alike, by the same measure as words of the vocabulary. A
 * suggestion only, among those that are told of anyway.
 */
@ApplicationScoped
public class LikelySpellings {
  private final Suppliers suppliers;
  private final CatalogService catalog;

  LikelySpellings(Suppliers suppliers, CatalogService catalog) {
    this.suppliers = suppliers;
    this.catalog = catalog;
  }

  /** Two names, the one of which more members write second. */
  public record Pair(String spelling, String supplier) {}

  private record Near(Pair pair, double distance) {}

  /** The nearest pairs, a few. */
  public List<Pair> pairs(Actor actor) {
    DeskAccess.moderates(actor);
    List<Supplier> all = suppliers.offered(actor, null);
    List<Near> near = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      for (Supplier other : all.subList(i + 1, all.size())) {
        near.add(new Near(pair(all.get(i), other), distance(all.get(i).name(), other.name())));
      }
    }
    return nearest(near);
  }

  /** Those nearest to a name, a few. */
  public List<Pair> of(Actor actor, String name) {
    DeskAccess.moderates(actor);
    String code = suppliers.code(name);
    return nearest(
        suppliers.offered(actor, null).stream()
            .filter(other -> !other.code().equals(code))
            .map(other -> new Near(new Pair(name, other.name()), distance(name, other.name())))
            .toList());
  }

  private static Pair pair(Supplier one, Supplier other) {
    return one.members() > other.members()
        ? new Pair(other.name(), one.name())
        : new Pair(one.name(), other.name());
  }

  private static List<Pair> nearest(List<Near> some) {
    return some.stream()
        .filter(near -> near.distance() <= CatalogLimits.SUGGESTION_DISTANCE)
        .sorted(Comparator.comparingDouble(Near::distance))
        .limit(CatalogLimits.SUGGESTIONS)
        .map(Near::pair)
        .toList();
  }

  private double distance(String one, String other) {
    Folding folding = catalog.vocabulary().folding();
    return Math.min(
        new Nearness(folding.words(one)).to(folding.fold(other)),
        new Nearness(folding.words(other)).to(folding.fold(one)));
  }
}

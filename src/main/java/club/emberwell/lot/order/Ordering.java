package club.emberwell.lot.order;

import club.emberwell.lot.Lots;
import club.emberwell.lot.order.Order.From;
import club.emberwell.lot.order.Order.Line;
import club.emberwell.lot.order.Order.Usable;
import club.emberwell.lot.order.WrittenOrder.Basis;
import club.emberwell.lot.order.WrittenOrder.Needed;
import club.emberwell.lot.supplier.Suppliers;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.stats.BetaBinomial;
import club.emberwell.stats.LotShares;
import club.emberwell.stats.UsableCount;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Says how many to order. The chance holds for the order as a whole: each of m lines may fail with
 * an m-th of what is left of 1 (Bonferroni), so that nothing need be known of how lines hang
 * together. Nothing is stored.
 */
@ApplicationScoped
public class Ordering {
  /** As a basis: the lots of every supplier. */
  public static final String ALL_LOTS = "all";

  /** What is assumed where nothing is known: so many usable of {@link #ASSUMED_RECEIVED}. */
  private static final int ASSUMED_USABLE = 9;

  private static final int ASSUMED_RECEIVED = 10;

  private final Lots lots;
  private final Suppliers suppliers;

  Ordering(Lots lots, Suppliers suppliers) {
    this.lots = lots;
    this.suppliers = suppliers;
  }

  /** The usable share beside where it comes from. */
  private record Known(UsableCount count, Usable told) {}

  /**
   * The smallest order that is enough with the chance wanted.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   */
  public Order order(Actor actor, WrittenOrder written) {
    OrderReader.Read read = OrderReader.read(written);
    Known known = known(actor, read.basis());
    double each = 1 - (1 - read.chance()) / read.lines().size();
    List<Line> lines = new ArrayList<>();
    for (Needed needed : read.lines()) {
      lines.add(line(needed, read.tests(), each, known.count()));
    }
    double failing = lines.stream().mapToDouble(line -> 1 - line.chance()).sum();
    int total = lines.stream().mapToInt(Line::order).sum();
    return new Order(lines, total, read.chance(), Math.max(0, 1 - failing), known.told());
  }

  private static Line line(Needed needed, int tests, double chance, UsableCount count) {
    int usable = needed.pieces() + tests;
    int order =
        count
            .smallestOrder(usable, chance, OrderLimits.MOST)
            .orElseThrow(() -> tooLarge(count.share()));
    return new Line(
        needed.name(),
        needed.pieces(),
        tests,
        order,
        count.atLeast(order, usable),
        order * count.share());
  }

  private static EntryRefused tooLarge(double share) {
    String detail =
        "Even %,d pieces would not be enough: about %.1f %% are usable."
            .formatted(OrderLimits.MOST, 100 * share);
    return new EntryRefused(RemarkId.ORDER_TOO_LARGE, "/lines/0/pieces", detail);
  }

  private Known known(Actor actor, Basis basis) {
    if (basis.share() != null) {
      UsableCount count = UsableCount.known(basis.share());
      return new Known(
          count, new Usable(From.SHARE, 0, null, null, null, basis.share(), null, null));
    }
    if (basis.received() != null) {
      return counted(From.RECORD, basis.usable(), basis.received());
    }
    return basis.lots() == null || basis.lots().isBlank()
        ? counted(From.ASSUMED, ASSUMED_USABLE, ASSUMED_RECEIVED)
        : ofLots(actor, basis.lots().strip());
  }

  private static Known counted(From from, int usable, int received) {
    BetaBinomial count = BetaBinomial.ofRecord(usable, received);
    return new Known(
        count,
        new Usable(from, 0, null, usable, received, count.share(), count.alpha(), count.beta()));
  }

  private Known ofLots(Actor actor, String supplier) {
    boolean all = supplier.equals(ALL_LOTS);
    String code = suppliers.code(supplier);
    List<LotShares.Count> own =
        lots.inspected(actor).stream()
            .filter(lot -> all || lot.code().equals(code))
            .map(lot -> new LotShares.Count(lot.usable(), lot.received()))
            .toList();
    List<LotShares.Count> shared =
        all || own.size() >= OrderLimits.FEW_LOTS
            ? List.of()
            : suppliers.ofOthers(actor, code).stream()
                .map(lot -> new LotShares.Count(lot.usable(), lot.received()))
                .toList();
    List<LotShares.Count> counted = Stream.concat(own.stream(), shared.stream()).toList();
    if (counted.isEmpty()) {
      String detail =
          all
              ? "None of your lots says how many were usable."
              : "None of your lots from %s says how many were usable.".formatted(supplier);
      throw new EntryRefused(RemarkId.LOTS_UNKNOWN, "/lots", detail);
    }
    BetaBinomial next = LotShares.next(counted);
    Usable told =
        new Usable(
            shared.isEmpty() ? From.LOTS : From.SHARED_LOTS,
            own.size(),
            shared.isEmpty() ? null : shared.size(),
            counted.stream().mapToInt(LotShares.Count::usable).sum(),
            counted.stream().mapToInt(LotShares.Count::received).sum(),
            next.share(),
            next.alpha(),
            next.beta());
    return new Known(next, told);
  }
}

package club.emberwell.lot.supplier;

import club.emberwell.entry.EntryAccess;
import club.emberwell.lot.CountedShare;
import club.emberwell.lot.supplier.Supplier.Blanks;
import club.emberwell.lot.supplier.Supplier.SharedLot;
import club.emberwell.lot.supplier.SupplierRepository.LotRow;
import club.emberwell.lot.supplier.SupplierRepository.Sums;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Ranks suppliers by the lower bound of the usable share, over the lots of all members who share
 * theirs. For members only; nothing is told of a supplier with fewer than {@link
 * SupplierLimits#FEWEST_MEMBERS} of them.
 */
@ApplicationScoped
public class Suppliers {
  private final SupplierRepository stored;

  Suppliers(SupplierRepository stored) {
    this.stored = stored;
  }

  /** The best first: by what their share surely is, not by what it was. */
  @Transactional
  public List<Supplier> ranked(Actor actor) {
    EntryAccess.signedIn(actor);
    return stored.sums(null, SupplierLimits.FEWEST_MEMBERS).stream()
        .map(Suppliers::supplier)
        .sorted(
            Comparator.comparingDouble((Supplier one) -> one.pieces().low())
                .reversed()
                .thenComparing(Supplier::name))
        .limit(SupplierLimits.LISTED)
        .toList();
  }

  /**
   * One of them with its lots.
   *
   * @throws EntryUnknown where too few members share lots of it
   */
  @Transactional
  public Supplier.Detail get(Actor actor, String code) {
    EntryAccess.signedIn(actor);
    Supplier supplier = one(code).orElseThrow(() -> new EntryUnknown("supplier"));
    List<LotRow> rows = stored.lots(code, SupplierLimits.LOTS);
    return new Supplier.Detail(
        supplier, kinds(rows), rows.stream().map(Suppliers::shared).toList());
  }

  /** The same without its lots; empty where too few members share lots of it. */
  @Transactional
  public Optional<Supplier> find(Actor actor, String code) {
    EntryAccess.signedIn(actor);
    return one(code);
  }

  private Optional<Supplier> one(String code) {
    return stored.sums(code, SupplierLimits.FEWEST_MEMBERS).stream()
        .findFirst()
        .map(Suppliers::supplier);
  }

  private static Supplier supplier(Sums sums) {
    return new Supplier(
        sums.code(),
        sums.name(),
        Math.toIntExact(sums.members()),
        Math.toIntExact(sums.lots()),
        CountedShare.of(Math.toIntExact(sums.usable()), Math.toIntExact(sums.received())),
        sums.least(),
        sums.most());
  }

  /** Of the lots that others share, how many pieces were usable, lot by lot. */
  @Transactional
  public List<CountedShare> ofOthers(Actor actor, String code) {
    UUID reader = EntryAccess.signedIn(actor);
    return one(code).isEmpty()
        ? List.of()
        : stored.lots(code, SupplierLimits.LOTS).stream()
            .filter(row -> !row.member().equals(reader))
            .map(row -> CountedShare.of(row.usable(), row.received()))
            .toList();
  }

  private static List<Blanks> kinds(List<LotRow> rows) {
    Map<String, List<LotRow>> byKind =
        rows.stream()
            .collect(
                Collectors.groupingBy(Suppliers::kind, LinkedHashMap::new, Collectors.toList()));
    return byKind.values().stream()
        .map(Suppliers::blanks)
        .sorted(Comparator.comparingInt(Blanks::lots).reversed())
        .toList();
  }

  private static String kind(LotRow row) {
    return Stream.of(row.material(), row.coating(), row.colour())
        .map(word -> word == null ? "" : word.toLowerCase(Locale.ROOT).strip())
        .collect(Collectors.joining("\n"));
  }

  private static Blanks blanks(List<LotRow> rows) {
    LotRow first = rows.get(0);
    return new Blanks(
        first.material(),
        first.coating(),
        first.colour(),
        (int) rows.stream().map(LotRow::member).distinct().count(),
        rows.size(),
        CountedShare.of(
            rows.stream().mapToInt(LotRow::usable).sum(),
            rows.stream().mapToInt(LotRow::received).sum()));
  }

  private static SharedLot shared(LotRow row) {
    return new SharedLot(
        row.month(),
        row.material(),
        row.coating(),
        row.colour(),
        CountedShare.of(row.usable(), row.received()));
  }
}

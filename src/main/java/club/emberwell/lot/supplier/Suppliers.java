package club.emberwell.lot.supplier;

import club.emberwell.bench.FieldReader;
import club.emberwell.entry.EntryAccess;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Place;
import club.emberwell.listing.Slice;
import club.emberwell.lot.CountedShare;
import club.emberwell.lot.LotLimits;
import club.emberwell.lot.supplier.Supplier.Blanks;
import club.emberwell.lot.supplier.Supplier.SharedLot;
import club.emberwell.lot.supplier.SupplierRepository.LotRow;
import club.emberwell.lot.supplier.SupplierRepository.Sums;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remarks;
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
  private static final ListOrder RANKED = new ListOrder("suppliers", false, SupplierLimits.PAGE);

  private final SupplierRepository stored;

  Suppliers(SupplierRepository stored) {
    this.stored = stored;
  }

  /**
   * The best first: by what their share surely is, not by what it was.
   *
   * @param part of a name, in any case; null for any name
   * @throws EntryRefused where it is longer than any name
   */
  @Transactional
  public Slice<Supplier> ranked(Actor actor, String part, Part wanted) {
    EntryAccess.signedIn(actor);
    String letters = letters(part);
    return Slice.read(
        wanted,
        RANKED,
        place -> beyond(all(letters), place),
        one -> List.of(rank(one), one.code()));
  }

  private static String letters(String part) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String letters = in.text("/q", part, LotLimits.WORDS, false);
    Remarks.refuse(in.remarks());
    return letters;
  }

  private List<Supplier> all(String part) {
    return stored.sums(null, part, SupplierLimits.FEWEST_MEMBERS).stream()
        .map(Suppliers::supplier)
        .sorted(Comparator.comparingLong(Suppliers::rank).thenComparing(Supplier::code))
        .toList();
  }

  private static List<Supplier> beyond(List<Supplier> ranked, Place place) {
    return ranked.stream()
        .filter(one -> place.atBeginning() || isBeyond(one, place))
        .skip(place.from())
        .limit(place.most())
        .toList();
  }

  private static boolean isBeyond(Supplier one, Place place) {
    int order = Long.compare(rank(one), place.number(0));
    return order > 0 || order == 0 && one.code().compareTo(place.word(1)) > 0;
  }

  /** Rises as the lower bound falls: bits of doubles that are not negative rise with them. */
  private static long rank(Supplier one) {
    return -Double.doubleToLongBits(Math.max(0, one.pieces().low()));
  }

  /**
   * The best, as many as a form offers.
   *
   * @param code of one that is among them wherever it ranks; null for none
   */
  @Transactional
  public List<Supplier> offered(Actor actor, String code) {
    EntryAccess.signedIn(actor);
    List<Supplier> all = all(null);
    List<Supplier> best = all.subList(0, Math.min(all.size(), SupplierLimits.OFFERED));
    Stream<Supplier> wanted = all.stream().skip(best.size()).filter(one -> one.code().equals(code));
    return Stream.concat(best.stream(), wanted).toList();
  }

  /**
   * One of them with its lots.
   *
   * @param code its own or that of a spelling of it
   * @throws EntryUnknown where too few members share lots of it
   */
  @Transactional
  public Supplier.Detail get(Actor actor, String code) {
    EntryAccess.signedIn(actor);
    String head = stored.head(code);
    Supplier supplier = one(head).orElseThrow(() -> new EntryUnknown("supplier"));
    List<LotRow> rows = stored.lots(head, SupplierLimits.LOTS);
    return new Supplier.Detail(
        supplier,
        stored.spellings(head),
        kinds(rows),
        rows.stream().map(Suppliers::shared).toList());
  }

  /** The code of the supplier whose spelling a name is, whoever may know it. */
  @Transactional
  public String code(String name) {
    return stored.code(name);
  }

  /** By any spelling, without its lots; empty where too few members share lots of it. */
  @Transactional
  public Optional<Supplier> named(Actor actor, String name) {
    EntryAccess.signedIn(actor);
    return one(stored.code(name));
  }

  private Optional<Supplier> one(String code) {
    return stored.sums(code, null, SupplierLimits.FEWEST_MEMBERS).stream()
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

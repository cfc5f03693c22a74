package club.emberwell.lot.drift;

import club.emberwell.entry.EntryAccess;
import club.emberwell.lot.drift.Drift.Change;
import club.emberwell.lot.drift.Drift.Noticed;
import club.emberwell.lot.drift.LotReportRepository.Named;
import club.emberwell.lot.drift.LotReportRepository.Naming;
import club.emberwell.lot.supplier.SupplierLimits;
import club.emberwell.member.Actor;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.stats.LotDrift;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * Says of lots whether they need another dose than earlier ones: a member's own from that member's
 * reports, and beside them what the lots say that other members share.
 */
@ApplicationScoped
public class LotDrifts {
  /** Letters of a month in a day: 2026-09. */
  private static final int MONTH = 7;

  private final LotReportRepository stored;
  private final ReportSource reports;

  LotDrifts(LotReportRepository stored, ReportSource reports) {
    this.stored = stored;
    this.reports = reports;
  }

  /** Of all the actor's lots that reports may name; a few statements however many there are. */
  @Transactional
  public Map<UUID, Drift> mine(Actor actor) {
    Map<UUID, Drift> all = new HashMap<>();
    List<Named> own = stored.own(EntryAccess.signedIn(actor));
    series(own)
        .forEach(
            (named, series) -> named.forEach(lot -> all.put(lot.lot(), drift(named, series, lot))));
    return all;
  }

  /** Of one, with what others say; empty where no report can name it. */
  @Transactional
  public Optional<Drift> of(Actor actor, UUID id) {
    UUID reader = EntryAccess.signedIn(actor);
    List<Named> own = stored.own(reader);
    return own.stream()
        .filter(lot -> lot.lot().equals(id))
        .findFirst()
        .map(
            lot -> {
              List<Named> alike = alike(own, lot.blanks());
              LotSeries series = LotSeries.of(alike, reports(alike));
              return drift(alike, series, lot).with(others(reader, lot));
            });
  }

  private static List<Named> alike(List<Named> lots, String blanks) {
    return lots.stream().filter(lot -> lot.blanks().equals(blanks)).toList();
  }

  /** What the check says of all shared lots of a supplier, where enough members were burning. */
  @Transactional
  public List<SharedDrift> shared(Actor actor, String supplier) {
    EntryAccess.signedIn(actor);
    List<SharedDrift> told = new ArrayList<>();
    series(stored.shared(supplier, SupplierLimits.LOTS))
        .forEach(
            (named, series) -> {
              int members = members(series);
              if (members >= SupplierLimits.FEWEST_MEMBERS) {
                String blanks = named.get(0).blanks();
                told.add(
                    new SharedDrift(
                        blanks.substring(blanks.indexOf('\n') + 1).strip().replaceAll("\n+", ", "),
                        members,
                        series.lots().size(),
                        noticed(series, day -> day.substring(0, MONTH))));
              }
            });
    return told;
  }

  private Drift.Others others(UUID reader, Named lot) {
    List<Named> theirs =
        alike(stored.shared(lot.supplier(), SupplierLimits.LOTS), lot.blanks()).stream()
            .filter(other -> !other.member().equals(reader))
            .toList();
    LotSeries series = LotSeries.of(theirs, reports(theirs));
    int members = members(series);
    int since = (int) series.lots().stream().filter(o -> o.day().compareTo(lot.day()) < 0).count();
    return members < SupplierLimits.FEWEST_MEMBERS
        ? null
        : LotDrift.since(series.doses(), since)
            .map(change -> new Drift.Others(members, Change.of(change)))
            .orElse(null);
  }

  private static int members(LotSeries series) {
    return (int) series.lots().stream().map(Named::member).distinct().count();
  }

  private Map<List<Named>, LotSeries> series(List<Named> lots) {
    Map<UUID, List<ReportSnapshot>> burned = reports(lots);
    Map<List<Named>, LotSeries> all = new LinkedHashMap<>();
    lots.stream()
        .collect(Collectors.groupingBy(Named::blanks, LinkedHashMap::new, Collectors.toList()))
        .values()
        .forEach(alike -> all.put(alike, LotSeries.of(alike, burned)));
    return all;
  }

  private Map<UUID, List<ReportSnapshot>> reports(List<Named> lots) {
    List<Naming> naming = stored.reports(lots.stream().map(Named::lot).toList());
    Map<UUID, ReportSnapshot> found =
        reports.shown(naming.stream().map(Naming::report).toList()).stream()
            .collect(Collectors.toMap(ReportSnapshot::id, report -> report));
    return naming.stream()
        .filter(one -> found.containsKey(one.report()))
        .collect(
            Collectors.groupingBy(
                Naming::lot,
                Collectors.mapping(one -> found.get(one.report()), Collectors.toList())));
  }

  private static Drift drift(List<Named> named, LotSeries series, Named lot) {
    int at = series.at(lot.lot());
    if (at < 0) {
      List<Named> before = named.subList(0, named.indexOf(lot));
      int earlier = (int) before.stream().filter(one -> series.at(one.lot()) >= 0).count();
      return new Drift(false, earlier, null, null, null);
    }
    List<LotDrift.Lot> upTo = series.doses().subList(0, at + 1);
    Change change = LotDrift.newest(upTo).map(Change::of).orElse(null);
    return new Drift(true, at, change, last(series, at), null);
  }

  /** A lot since when the dose is another tells so, also where a later one was needed to notice. */
  private static Noticed last(LotSeries series, int at) {
    Noticed last = null;
    for (LotDrift.Flag flag : LotDrift.flags(series.doses())) {
      last = flag.since() <= at ? noticed(series, flag, day -> day) : last;
    }
    return last;
  }

  private static List<Noticed> noticed(LotSeries series, UnaryOperator<String> day) {
    return LotDrift.flags(series.doses()).stream().map(flag -> noticed(series, flag, day)).toList();
  }

  private static Noticed noticed(LotSeries series, LotDrift.Flag flag, UnaryOperator<String> day) {
    return new Noticed(
        day.apply(series.lots().get(flag.since()).day()),
        day.apply(series.lots().get(flag.at()).day()),
        flag.ratio());
  }
}

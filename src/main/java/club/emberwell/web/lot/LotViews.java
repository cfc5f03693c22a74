package club.emberwell.web.lot;

import club.emberwell.lot.CountedShare;
import club.emberwell.lot.Lot;
import club.emberwell.lot.Lots;
import club.emberwell.lot.WrittenLot;
import club.emberwell.lot.drift.Drift;
import club.emberwell.lot.drift.LotDrifts;
import club.emberwell.lot.supplier.Supplier;
import club.emberwell.lot.supplier.Suppliers;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.report.photo.KeptPhotos.Kept;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.SharePlot;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;

/** Lots of a member, ready to print. */
@ApplicationScoped
class LotViews {
  /** Lots it takes before a drawing says more than its table. */
  private static final int PLOTTED = 2;

  private final Lots lots;
  private final LotDrifts drifts;
  private final Suppliers suppliers;
  private final KeptPhotos photos;

  LotViews(Lots lots, LotDrifts drifts, Suppliers suppliers, KeptPhotos photos) {
    this.lots = lots;
    this.drifts = drifts;
    this.suppliers = suppliers;
    this.photos = photos;
  }

  /**
   * A lot with what stands round it.
   *
   * @param photo or null
   * @param supplier what members share of it, or null
   * @param rate what may be told of the check over lots
   * @param post where a result with it is posted
   */
  record One(LotCard lot, Kept photo, InTime inTime, Shared supplier, String rate, String post) {}

  /** A lot beside those of the same supplier; no plot where too few came on a known day. */
  record InTime(SharePlot plot, List<Row> rows) {}

  /**
   * One of them.
   *
   * @param chosen whether it is the one the page is about
   * @param dose beside earlier lots; null where nothing is known
   */
  record Row(LotCard lot, boolean chosen, String dose) {}

  /** A supplier in a line. */
  record Shared(String href, String said) {}

  List<LotCard> cards(Actor actor, List<Lot> some) {
    Map<UUID, Drift> all = drifts.mine(actor);
    NumberStyle style = actor.units().style();
    return some.stream().map(lot -> card(lot, all.get(lot.id()), style)).toList();
  }

  private static LotCard card(Lot lot, Drift drift, NumberStyle style) {
    return LotCard.of(
        lot, drift == null ? null : DriftText.of(drift, lot.written().batch(), style));
  }

  One one(Actor actor, Lot lot) {
    NumberStyle style = actor.units().style();
    return new One(
        card(lot, drifts.of(actor, lot.id()).orElse(null), style),
        photos.of(lot.id()).orElse(null),
        inTime(actor, lot),
        suppliers.named(actor, lot.written().supplier()).map(LotViews::shared).orElse(null),
        DriftText.RATE,
        post(lot.written()));
  }

  private static String post(WrittenLot lot) {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("lot", lot.batch());
    fields.put("supplier", lot.supplier());
    fields.put("material", lot.blank().material());
    fields.put("coating", lot.blank().coating());
    fields.put("colour", lot.blank().colour());
    fields.values().removeIf(Objects::isNull);
    return fields.entrySet().stream()
        .map(field -> field.getKey() + "=" + QueryString.encoded(field.getValue()))
        .collect(Collectors.joining("&", "/post?", ""));
  }

  private static Shared shared(Supplier supplier) {
    return new Shared(
        "/suppliers/" + supplier.code(),
        "%s of the pieces in %d lots of %d members are usable."
            .formatted(ShareText.of(supplier.pieces()), supplier.lots(), supplier.members()));
  }

  private InTime inTime(Actor actor, Lot chosen) {
    List<Lot> all = lots.ofSameSupplier(actor, chosen.id());
    Map<UUID, Drift> drift = drifts.mine(actor);
    NumberStyle style = actor.units().style();
    List<Row> rows =
        all.stream()
            .map(
                lot ->
                    new Row(
                        LotCard.of(lot, null),
                        lot.id().equals(chosen.id()),
                        DriftText.ratio(drift.get(lot.id()), style)))
            .toList();
    List<SharePlot.Counted> dated =
        all.stream()
            .filter(lot -> lot.written().date() != null && lot.usableShare().isPresent())
            .map(lot -> counted(lot, lot.id().equals(chosen.id())))
            .toList();
    Caption caption =
        new Caption(
            "in-time",
            "Usable share of your lots over time",
            "Each dot is a lot, its line the 95 % interval. The table says the same.");
    return new InTime(dated.size() < PLOTTED ? null : SharePlot.of(caption, dated), rows);
  }

  private static SharePlot.Counted counted(Lot lot, boolean chosen) {
    CountedShare share = lot.usableShare().orElseThrow();
    return new SharePlot.Counted(
        LocalDate.parse(lot.written().date()),
        share.share(),
        share.low(),
        share.high(),
        chosen,
        lot.title());
  }
}

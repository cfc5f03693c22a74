package club.emberwell.web.lot;

import club.emberwell.listing.Slice;
import club.emberwell.lot.CountedShare;
import club.emberwell.lot.drift.LotDrifts;
import club.emberwell.lot.supplier.Supplier;
import club.emberwell.lot.supplier.SupplierLimits;
import club.emberwell.lot.supplier.Suppliers;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.plot.Caption;
import club.emberwell.web.plot.SharePlot;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Suppliers as the lots tell that members share. */
@Path("/suppliers")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class SupplierPages extends Pages {
  private static final String LIST = "/suppliers";

  private final Suppliers suppliers;
  private final LotDrifts drifts;

  SupplierPages(Suppliers suppliers, LotDrifts drifts) {
    this.suppliers = suppliers;
    this.drifts = drifts;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance suppliers(Found found, int fewest);

    static native TemplateInstance supplier(One one);
  }

  /**
   * A page of the list.
   *
   * @param q part of a name that was looked for; empty for all
   */
  record Found(String q, List<Line> suppliers, Pager pager) {}

  /**
   * A supplier of the list.
   *
   * @param spread of single lots
   */
  record Line(
      String href, String name, int members, int lots, String counts, String share, String spread) {
    static Line of(Supplier supplier) {
      CountedShare pieces = supplier.pieces();
      return new Line(
          LIST + "/" + supplier.code(),
          supplier.name(),
          supplier.members(),
          supplier.lots(),
          "%d of %d".formatted(pieces.usable(), pieces.received()),
          ShareText.of(pieces),
          "%s to %s"
              .formatted(ShareText.percent(supplier.least()), ShareText.percent(supplier.most())));
    }
  }

  /**
   * A supplier with its lots.
   *
   * @param plot null where no lot says when it came
   * @param drifts sentences; empty where too few members burned lots of one sort
   * @param spelled other names that count as its own, in one line; null where none does
   */
  record One(
      Line line,
      String spelled,
      Ways ways,
      SharePlot plot,
      List<Kind> kinds,
      List<Month> months,
      List<String> drifts,
      String rate) {}

  /**
   * Where one goes on from a supplier.
   *
   * @param order where it is said how many to order
   * @param join where its name is joined to another; null for who may not
   */
  record Ways(String order, String join) {
    static Ways of(Supplier supplier, boolean moderates) {
      String name = QueryString.encoded(supplier.name());
      return new Ways(
          "/lots/order?lots=" + name, moderates ? "/desk/suppliers/join?spelling=" + name : null);
    }
  }

  /** Lots of one material, coating and colour. */
  record Kind(String name, int members, int lots, String counts, String share) {}

  /** A lot; month is null where nobody said. */
  record Month(String month, String name, String counts, String share) {}

  @GET
  public TemplateInstance suppliers(@RestQuery String q, @RestQuery("page") String number) {
    String part = q == null ? "" : q.strip();
    Slice<Supplier> found = suppliers.ranked(actor(), part, Pager.part(number));
    String base = part.isEmpty() ? LIST : LIST + "?q=" + QueryString.encoded(part);
    List<Line> lines = found.rows().stream().map(Line::of).toList();
    return Templates.suppliers(
        new Found(part, lines, Pager.of(found, base)), SupplierLimits.FEWEST_MEMBERS);
  }

  @GET
  @Path("{code}")
  public Response supplier(@RestPath String code) {
    Supplier.Detail found = suppliers.get(actor(), code);
    return found.supplier().code().equals(code)
        ? Response.ok(shown(found)).build()
        : to(Line.of(found.supplier()).href());
  }

  private TemplateInstance shown(Supplier.Detail found) {
    String code = found.supplier().code();
    NumberStyle style = actor().units().style();
    return Templates.supplier(
        new One(
            Line.of(found.supplier()),
            found.spellings().isEmpty() ? null : String.join(", ", found.spellings()),
            Ways.of(found.supplier(), actor().moderates()),
            plot(found.lots()),
            found.kinds().stream().map(SupplierPages::kind).toList(),
            found.lots().stream().map(SupplierPages::month).toList(),
            drifts.shared(actor(), code).stream()
                .map(drift -> DriftText.shared(drift, style))
                .toList(),
            DriftText.RATE));
  }

  private static String name(String material, String coating, String colour) {
    return Stream.of(material, coating, colour)
        .filter(Objects::nonNull)
        .collect(Collectors.joining(", "));
  }

  private static String counts(CountedShare pieces) {
    return "%d of %d".formatted(pieces.usable(), pieces.received());
  }

  private static Kind kind(Supplier.Blanks kind) {
    return new Kind(
        name(kind.material(), kind.coating(), kind.colour()),
        kind.members(),
        kind.lots(),
        counts(kind.pieces()),
        ShareText.of(kind.pieces()));
  }

  private static Month month(Supplier.SharedLot lot) {
    return new Month(
        lot.month(),
        name(lot.material(), lot.coating(), lot.colour()),
        counts(lot.pieces()),
        ShareText.of(lot.pieces()));
  }

  private static SharePlot plot(List<Supplier.SharedLot> lots) {
    List<SharePlot.Counted> dated =
        lots.stream()
            .filter(lot -> lot.month() != null)
            .map(
                lot ->
                    new SharePlot.Counted(
                        YearMonth.parse(lot.month()).atDay(1),
                        lot.pieces().share(),
                        lot.pieces().low(),
                        lot.pieces().high(),
                        false,
                        name(lot.material(), lot.coating(), lot.colour())))
            .toList();
    Caption caption =
        new Caption(
            "lots",
            "Usable share of shared lots over time",
            "Each dot is a lot, its line the 95 % interval. The table says the same.");
    return dated.isEmpty() ? null : SharePlot.of(caption, dated);
  }
}

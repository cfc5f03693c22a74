package club.emberwell.web.lot;

import club.emberwell.grid.Grid;
import club.emberwell.grid.GridService;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.lot.Lots;
import club.emberwell.lot.order.Ordering;
import club.emberwell.lot.supplier.Supplier;
import club.emberwell.lot.supplier.Suppliers;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.Words;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** How many to order. It stores nothing; the address holds all that was typed. */
@Path("/lots/order")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class OrderPages extends Pages {
  private static final int UNPROCESSABLE = 422;

  private final Ordering ordering;
  private final Lots lots;
  private final Suppliers suppliers;
  private final GridService grids;
  private final Words words;

  OrderPages(Ordering ordering, Lots lots, Suppliers suppliers, GridService grids, Words words) {
    this.ordering = ordering;
    this.lots = lots;
    this.suppliers = suppliers;
    this.grids = grids;
    this.words = words;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance order(Asked asked);
  }

  /**
   * The question in one state.
   *
   * @param answer null before anything was asked, or where it cannot be answered
   */
  record Asked(Form form, OrderText answer, List<String> colours) {}

  @GET
  public Response order(@Context UriInfo uri) {
    SentForm sent = new SentForm(uri.getQueryParameters());
    Actor actor = actor();
    String asked = sent.text("lots");
    String code = asked == null || asked.equals(Ordering.ALL_LOTS) ? null : suppliers.code(asked);
    List<Lots.Inspected> own = lots.inspected(actor);
    List<Supplier> shared = suppliers.offered(actor, code);
    Form form = OrderForm.of(own, shared);
    if (sent.lacks(OrderForm.asking()) && sent.text("chance") == null) {
      OrderForm.choose(form, own, shared, code);
      return Response.ok(shown(form.fill(fromGrid(actor, sent.id("grid"))), null)).build();
    }
    form.fill(sent.values());
    OrderForm.choose(form, own, shared, code);
    try {
      OrderText answer = OrderText.of(ordering.order(actor, OrderForm.written(sent)));
      return Response.ok(shown(form, answer)).build();
    } catch (EntryRefused e) {
      page.fail();
      return Response.status(UNPROCESSABLE).entity(shown(form.remarks(e.remarks()), null)).build();
    }
  }

  private TemplateInstance shown(Form form, OrderText answer) {
    return Templates.order(new Asked(form, answer, words.lists().colours()));
  }

  /** What a planned grid says: the colour of its work, and how many blanks it takes. */
  private Map<String, String> fromGrid(Actor actor, UUID id) {
    if (id == null) {
      return Map.of();
    }
    Grid grid = grids.get(actor, id);
    GridPlan plan = grids.plan(actor, grid).plan();
    String colour = grid.written().work().of(WorkProperty.COLOUR) instanceof String c ? c : "";
    return Map.of(
        OrderForm.name(0), colour, "tests", Integer.toString(plan.layout().parts().blanks()));
  }
}

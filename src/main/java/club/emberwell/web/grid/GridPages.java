package club.emberwell.web.grid;

import club.emberwell.access.PublicUrl;
import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.grid.Grid;
import club.emberwell.grid.GridService;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.grid.sheet.GridCsv;
import club.emberwell.grid.sheet.GridSvg;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.tag.QrCode;
import club.emberwell.tag.TagCode;
import club.emberwell.tag.Tags;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.Words;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** My test grids: the list, one of them, its sheet, and changing it. */
@Path("/grids")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class GridPages extends Pages {
  private static final String PATH = "/grids/";

  private final GridService grids;
  private final Machines machines;
  private final CatalogService catalog;
  private final Tags tags;
  private final PublicUrl address;
  private final Words words;

  GridPages(
      GridService grids,
      Machines machines,
      CatalogService catalog,
      Tags tags,
      PublicUrl address,
      Words words) {
    this.grids = grids;
    this.machines = machines;
    this.catalog = catalog;
    this.tags = tags;
    this.address = address;
    this.words = words;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance grids(Listing list);

    static native TemplateInstance grid(One one);

    static native TemplateInstance sheet(Sheet sheet);

    static native TemplateInstance edit(Edit edit);

    static native TemplateInstance withdraw(Head grid);
  }

  /** One page of the list. */
  record Listing(List<Line> lines, Pager pager) {}

  /**
   * A grid in the list.
   *
   * @param judged whether its results are in
   */
  record Line(UUID id, String name, Instant made, boolean judged) {}

  /**
   * Which grid it is.
   *
   * @param tag null where it has none
   * @param report address of its results, or null
   */
  record Head(UUID id, String name, int version, String tag, String report) {
    static Head of(Grid grid, String tag) {
      return new Head(
          grid.id(),
          grid.name(),
          grid.version(),
          tag,
          grid.report() == null ? null : "/reports/" + grid.report());
    }
  }

  /**
   * A grid.
   *
   * @param notes as written, or null
   */
  record One(Head head, PlanView plan, String notes) {}

  /**
   * A grid for the printer.
   *
   * @param qr leads to the grid, null where it has no tag
   */
  record Sheet(Head head, PlanView plan, QrCode qr, String notes) {}

  /** The form of a grid. */
  record Edit(Head head, PlanFields fields, Words.Lists words) {}

  @GET
  public TemplateInstance list(@RestQuery @DefaultValue("0") String from, @RestQuery String done) {
    say("withdrawn".equals(done) ? done : null, "The grid is removed. Its results stay.");
    Slice<Grid> mine = grids.mine(actor(), Pager.part(from));
    return Templates.grids(
        new Listing(
            mine.rows().stream()
                .map(
                    grid ->
                        new Line(
                            grid.id(),
                            grid.name(),
                            grid.entry().times().created(),
                            grid.report() != null))
                .toList(),
            Pager.of(mine, number -> number == 0 ? "/grids" : "/grids?from=" + number)));
  }

  @GET
  @Path("{id}")
  public TemplateInstance grid(@RestPath UUID id, @RestQuery String done) {
    say("changed".equals(done) ? done : null, "Saved.");
    Grid grid = grids.get(actor(), id);
    return Templates.grid(new One(head(grid), view(grid), notes(grid)));
  }

  private Head head(Grid grid) {
    return Head.of(grid, tags.of(grid.id()).map(TagCode::text).orElse(null));
  }

  private PlanView view(Grid grid) {
    Actor actor = actor();
    UUID machine = grid.written().machine();
    String name =
        machine == null
            ? null
            : machines.find(actor.memberId(), machine).map(Machine::name).orElse(null);
    return PlanViews.of(grids.plan(actor, grid), name, catalog.vocabulary(), actor.units());
  }

  private static String notes(Grid grid) {
    return grid.written().work().text(WorkProperty.NOTES);
  }

  @GET
  @Path("{id}/sheet")
  public TemplateInstance sheet(@RestPath UUID id, @RestQuery String done) {
    say(done, "Saved. Print this sheet, burn the grid, then enter the results.");
    Grid grid = grids.get(actor(), id);
    Head head = head(grid);
    QrCode qr = head.tag() == null ? null : QrCode.of(address.of("/t/" + head.tag()));
    return Templates.sheet(new Sheet(head, view(grid), qr, notes(grid)));
  }

  @GET
  @Path("{id}/sheet.svg")
  @Produces("image/svg+xml")
  public Response svg(@RestPath UUID id) {
    Grid grid = grids.get(actor(), id);
    Planned planned = grids.plan(actor(), grid);
    String tag = tags.of(id).map(TagCode::text).orElse("");
    return file(GridSvg.of(planned, tag, actor().units()), "image/svg+xml", id + ".svg");
  }

  @GET
  @Path("{id}/sheet.csv")
  @Produces("text/csv")
  public Response csv(@RestPath UUID id) {
    Grid grid = grids.get(actor(), id);
    Planned planned = grids.plan(actor(), grid);
    return file(GridCsv.of(planned), "text/csv;charset=UTF-8", id + ".csv");
  }

  private static Response file(String text, String type, String name) {
    return Response.ok(text, type)
        .header("Content-Disposition", "inline; filename=\"grid-" + name + "\"")
        .header("Cache-Control", "private, no-cache")
        .build();
  }

  @GET
  @Path("{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    Grid grid = grids.get(actor(), id);
    return edit(grid, form(grid));
  }

  private TemplateInstance edit(Grid grid, Form form) {
    return Templates.edit(new Edit(Head.of(grid, null), PlanFields.of(form), words.lists()));
  }

  private Form form(Grid grid) {
    return PlanForm.of(machines.of(actor()))
        .changing("grid", grid.version(), PATH + grid.id())
        .fill(PlanForm.values(grid.written()));
  }

  @POST
  @Path("{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
    Actor actor = actor();
    Grid grid = grids.get(actor, id);
    return take(sent, () -> form(grids.get(actor, id)), form -> edit(grid, form))
        .store(
            s -> grids.revise(actor, id, s.version(), PlanForm.written(s), actor.units().style()))
        .then(PATH + id + "?done=changed");
  }

  @GET
  @Path("{id}/withdraw")
  public TemplateInstance askWithdraw(@RestPath UUID id) {
    return Templates.withdraw(Head.of(grids.get(actor(), id), null));
  }

  @POST
  @Path("{id}/withdraw")
  public Response withdraw(@RestPath UUID id) {
    grids.get(actor(), id);
    grids.withdraw(actor(), id, null);
    return to("/grids?done=withdrawn");
  }
}

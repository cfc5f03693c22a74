package club.emberwell.api.grid;

import club.emberwell.access.ReadsOnly;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.grid.Grid;
import club.emberwell.grid.GridPosting;
import club.emberwell.grid.GridService;
import club.emberwell.grid.plan.GridPlanner;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.grid.result.GridResults;
import club.emberwell.grid.result.WrittenResults;
import club.emberwell.grid.sheet.GridCsv;
import club.emberwell.grid.sheet.GridSvg;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.tag.TagCode;
import club.emberwell.tag.Tags;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One's own test grids. */
@Path(GridResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Grids")
public class GridResource {
  static final String PATH = "/api/v1/grids";
  private static final String ANY = "*/*";

  private final GridService grids;
  private final GridPlanner planner;
  private final GridResults results;
  private final Tags tags;
  private final SearchIndex index;
  private final ApiRequest request;

  GridResource(
      GridService grids,
      GridPlanner planner,
      GridResults results,
      Tags tags,
      SearchIndex index,
      ApiRequest request) {
    this.grids = grids;
    this.planner = planner;
    this.results = results;
    this.tags = tags;
    this.index = index;
    this.request = request;
  }

  @POST
  @Path("plan")
  @ReadsOnly
  @Operation(
      operationId = "planGrid",
      summary = "Plan a test grid",
      description =
          "Stores nothing. Axes without values, and settings that are not given, come from the range"
              + " of the work: steps of equal ratio of dose over the band of the next member and the"
              + " window. Cells the machine cannot do are left out with the reason.")
  public GridJson plan(GridRequest sent) {
    sent.withoutResults();
    return GridJson.of(planner.plan(request.actor(), sent.written(), NumberStyle.ANY));
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "addGrid",
      summary = "Keep a test grid",
      description =
          "It is planned as by /plan and kept with the values its axes got; with results its report"
              + " is posted too. Only its author sees it. Needs an Idempotency-Key.")
  @APIResponseSchema(value = GridJson.class, responseCode = "201")
  public Response post(GridRequest sent) {
    Response stored = request.once(sent, () -> stored(sent));
    if (sent.results() != null && stored.getLocation() != null) {
      String path = stored.getLocation().getPath();
      UUID id = UUID.fromString(path.substring(path.lastIndexOf('/') + 1));
      index.awaitSeen(grids.get(request.actor(), id).report());
    }
    return stored;
  }

  private Response stored(GridRequest sent) {
    GridPosting posting = new GridPosting(sent.id(), sent.written(), NumberStyle.ANY);
    GridService.Saved saved = grids.save(request.actor(), posting);
    Grid grid = saved.grid();
    if (sent.results() != null) {
      grid = judged(grid, sent.results());
    }
    return answer(Response.created(URI.create(PATH + "/" + grid.id())), grid, saved.planned());
  }

  /** What is wrong with the results, at their fields. */
  private Grid judged(Grid grid, WrittenResults sent) {
    try {
      return results.send(request.actor(), grid.id(), null, sent, null).grid();
    } catch (EntryRefused e) {
      throw new EntryRefused(
          e.remarks().stream().map(remark -> remark.at("/results" + remark.field())).toList());
    }
  }

  @GET
  @Operation(operationId = "listGrids", summary = "My test grids", description = "Newest first.")
  public ListJson<GridJson.Brief> list(@BeanParam ListQuery list) {
    return ListJson.of(grids.mine(request.actor(), list.part()), GridJson.Brief::of);
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getGrid", summary = "One of my test grids")
  @APIResponseSchema(value = GridJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    Grid grid = grids.get(request.actor(), id);
    return answer(Response.ok(), grid, grids.plan(request.actor(), grid));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "reviseGrid",
      summary = "Plan a test grid anew",
      description = "Once its results are in, its cells stay. Needs If-Match.")
  @APIResponseSchema(value = GridJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, GridRequest sent) {
    sent.withoutResults();
    GridService.Saved saved =
        grids.revise(request.actor(), id, request.version(), sent.written(), NumberStyle.ANY);
    return answer(Response.ok(), saved.grid(), saved.planned());
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "withdrawGrid",
      summary = "Withdraw a test grid",
      description = "The report with its results stays. Heeds If-Match.")
  public void withdraw(@PathParam("id") UUID id) {
    grids.withdraw(request.actor(), id, request.versionIfGiven());
  }

  @GET
  @Path("{id}/sheet.svg")
  @Produces("image/svg+xml")
  @Consumes(ANY)
  @Operation(
      operationId = "getGridSheet",
      summary = "The sheet of a grid",
      description = "SVG in true millimetres: cells, numbers of both axes, tag.")
  public Response svg(@PathParam("id") UUID id) {
    Grid grid = grids.get(request.actor(), id);
    Planned planned = grids.plan(request.actor(), grid);
    String tag = tags.of(id).map(TagCode::text).orElse("");
    return file(GridSvg.of(planned, tag, request.actor().units()), "image/svg+xml", id + ".svg");
  }

  @GET
  @Path("{id}/sheet.csv")
  @Produces("text/csv")
  @Consumes(ANY)
  @Operation(
      operationId = "getGridTable",
      summary = "The plan of a grid as a table",
      description = "RFC 4180, canonical units: places in mm, settings, dose, chance.")
  public Response csv(@PathParam("id") UUID id) {
    Grid grid = grids.get(request.actor(), id);
    Planned planned = grids.plan(request.actor(), grid);
    return file(GridCsv.of(planned), "text/csv;charset=UTF-8", id + ".csv");
  }

  private static Response file(String text, String type, String name) {
    return Response.ok(text, type)
        .header("Content-Disposition", "attachment; filename=\"grid-" + name + "\"")
        .header("Cache-Control", "private, no-cache")
        .build();
  }

  private static Response answer(Response.ResponseBuilder response, Grid grid, Planned planned) {
    return ApiRequest.answer(response, grid.version(), GridJson.of(grid, planned));
  }
}

package club.emberwell.api.grid;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.grid.result.GridResults;
import club.emberwell.grid.result.Results;
import club.emberwell.grid.result.WrittenResults;
import club.emberwell.member.Role;
import club.emberwell.report.photo.Photos;
import club.emberwell.search.index.SearchIndex;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** How the tests of a grid came out. */
@Path("/api/v1/grids/{id}/results")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Grids")
public class GridResultResource {
  private final GridResults results;
  private final GridPhotos photos;
  private final SearchIndex index;
  private final CatalogService catalog;
  private final ApiRequest request;

  GridResultResource(
      GridResults results,
      GridPhotos photos,
      SearchIndex index,
      CatalogService catalog,
      ApiRequest request) {
    this.results = results;
    this.photos = photos;
    this.index = index;
    this.catalog = catalog;
    this.request = request;
  }

  @WithEtag
  @GET
  @Operation(
      operationId = "getGridResults",
      summary = "Each cell of one's own grid with how it came out",
      description =
          "Settings, dose, effect; with a photo whose corners are marked also its mean colour and"
              + " the CIEDE2000 distance from the bare surface: an aid to the eye, no verdict.")
  @APIResponseSchema(value = ResultsJson.class, responseCode = "200")
  @Fails(ProblemKind.PICTURES_BUSY)
  public Response get(@PathParam("id") UUID id) {
    return answer(results.of(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Operation(
      operationId = "putGridResults",
      summary = "Say how the tests came out",
      description =
          "A matrix of effects, null where a test is not judged. Makes the grid's one report, or"
              + " another version of it; the same sent again changes nothing. Needs If-Match with"
              + " the version of the grid.")
  @APIResponseSchema(value = ResultsJson.class, responseCode = "200")
  @Fails(ProblemKind.PICTURES_BUSY)
  public Response put(@PathParam("id") UUID id, WrittenResults sent) {
    int version = request.version();
    Photos.Ready photo = results.shown(request.actor(), id, sent);
    Results kept = results.send(request.actor(), id, version, sent, photo);
    index.awaitSeen(kept.grid().report());
    return answer(kept);
  }

  private Response answer(Results found) {
    return ApiRequest.answer(
        Response.ok(),
        found.grid().version(),
        ResultsJson.of(
            found,
            photos.colours(request.actor(), found.grid().id(), found.plan()),
            catalog.cautions()));
  }
}

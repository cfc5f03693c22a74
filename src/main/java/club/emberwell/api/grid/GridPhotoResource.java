package club.emberwell.api.grid;

import club.emberwell.access.Awaited;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.photo.SentPicture;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.grid.photo.Corners;
import club.emberwell.grid.photo.GridPhoto;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.grid.photo.Spot;
import club.emberwell.member.Role;
import club.emberwell.report.photo.ReadyPhotos;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.InputStream;
import java.util.List;
import java.util.UUID;
import java.util.function.IntFunction;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The photo of a grid, for its author. */
@Path("/api/v1/grids/{id}/photo")
@RolesAllowed(Role.WRITE)
@Tag(name = "Grids")
public class GridPhotoResource {
  private final GridPhotos photos;
  private final ReadyPhotos ready;
  private final ApiRequest request;

  GridPhotoResource(GridPhotos photos, ReadyPhotos ready, ApiRequest request) {
    this.photos = photos;
    this.ready = ready;
    this.request = request;
  }

  /** Where the grid lies in its photo: top left, top right, bottom right, bottom left. */
  record Marks(List<Spot> corners) {
    private static final int FOUR = 4;

    private Corners all() {
      IntFunction<Spot> at = i -> corners != null && corners.size() == FOUR ? corners.get(i) : null;
      return new Corners(at.apply(0), at.apply(1), at.apply(2), at.apply(3));
    }
  }

  /**
   * A photo as it is kept.
   *
   * @param corners null where they are not marked
   */
  record PhotoJson(String url, int width, int height, @Nullable List<Spot> corners) {
    static PhotoJson of(GridPhoto photo) {
      return new PhotoJson(
          "/api/v1/grids/" + photo.grid() + "/photo",
          photo.width(),
          photo.height(),
          photo.corners() == null ? null : photo.corners().all());
    }
  }

  @PUT
  @Consumes({"image/jpeg", "image/png", "image/webp", MediaType.APPLICATION_OCTET_STREAM})
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "putGridPhoto",
      summary = "Keep the photo of a grid",
      description =
          "JPEG, PNG or WebP, at most 10 MB and 40 million pixels. It is encoded anew without"
              + " metadata, and takes the place of the one before.")
  @Fails(ProblemKind.PICTURES_BUSY)
  @Blocking
  public Uni<PhotoJson> put(@PathParam("id") UUID id, InputStream body) {
    return SentPicture.of(body)
        .used(
            upload ->
                Awaited.of(ready.of(request.actor(), upload))
                    .map(picture -> PhotoJson.of(photos.put(request.actor(), id, picture))));
  }

  @PUT
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "markGridPhoto",
      summary = "Mark the corners of a grid in its photo",
      description =
          "The outer corners of the outermost cells, clockwise from the top left of the plan, as"
              + " shares of the picture from 0 to 1.")
  @Fails(ProblemKind.PICTURES_BUSY)
  public PhotoJson mark(@PathParam("id") UUID id, Marks sent) {
    return PhotoJson.of(photos.mark(request.actor(), id, sent.all()));
  }

  @GET
  @Produces("image/jpeg")
  @Operation(operationId = "getGridPhoto", summary = "The photo of a grid")
  public Response get(@PathParam("id") UUID id) {
    return Response.ok(photos.bytes(request.actor(), id), "image/jpeg")
        .header("X-Content-Type-Options", "nosniff")
        .header("Content-Security-Policy", "default-src 'none'; sandbox")
        .header("Content-Disposition", "inline; filename=\"" + id + ".jpg\"")
        .header("Cache-Control", "private, no-cache")
        .build();
  }

  @DELETE
  @Operation(operationId = "removeGridPhoto", summary = "Take the photo of a grid away")
  public void remove(@PathParam("id") UUID id) {
    photos.remove(request.actor(), id);
  }
}

package club.emberwell.api.photo;

import club.emberwell.access.Awaited;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.KeptPhotoJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.report.photo.KeptPhotos;
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
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;

/**
 * The one photo of a kind of entries that only their authors see. Where the description names the
 * kind, {@link club.emberwell.api.contract.KindWords} puts it in.
 */
public abstract class KeptPhotoResource {
  private final EntryKind kind;
  private final KeptPhotos photos;
  private final ReadyPhotos ready;
  private final ApiRequest request;

  KeptPhotoResource(EntryKind kind, KeptPhotos photos, ReadyPhotos ready, ApiRequest request) {
    this.kind = kind;
    this.photos = photos;
    this.ready = ready;
    this.request = request;
  }

  @PUT
  @Path("{id}/photo")
  @RolesAllowed(Role.WRITE)
  @Consumes({"image/jpeg", "image/png", "image/webp", MediaType.APPLICATION_OCTET_STREAM})
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "put{Kind}Photo",
      summary = "Keep the photo of {a kind}",
      description =
          "JPEG, PNG or WebP, at most 10 MB and 40 million pixels. It is encoded anew without"
              + " metadata, and takes the place of the one before. Nobody else sees it.")
  @Fails(ProblemKind.PICTURES_BUSY)
  @Blocking
  public Uni<KeptPhotoJson> put(@PathParam("id") UUID id, InputStream body) {
    return SentPicture.of(body)
        .used(
            upload ->
                Awaited.of(ready.of(request.actor(), upload))
                    .map(
                        picture ->
                            KeptPhotoJson.of(
                                kind, photos.put(request.actor(), kind, id, picture))));
  }

  @GET
  @Path("{id}/photo")
  @RolesAllowed(Role.WRITE)
  @Produces("image/jpeg")
  @Operation(operationId = "get{Kind}Photo", summary = "The photo of {a kind}")
  public Response get(@PathParam("id") UUID id) {
    return Response.ok(photos.bytes(request.actor(), kind, id), "image/jpeg")
        .header("X-Content-Type-Options", "nosniff")
        .header("Content-Security-Policy", "default-src 'none'; sandbox")
        .header("Content-Disposition", "inline; filename=\"" + id + ".jpg\"")
        .header("Cache-Control", "private, no-cache")
        .build();
  }

  @DELETE
  @Path("{id}/photo")
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "remove{Kind}Photo", summary = "Take the photo of {a kind} away")
  public void remove(@PathParam("id") UUID id) {
    photos.remove(request.actor(), kind, id);
  }
}

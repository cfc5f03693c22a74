package club.emberwell.api.report;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ReportJson.PhotoJson;
import club.emberwell.api.view.ReportViews;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.member.Role;
import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.Photos;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** The pictures of a report. */
@Path(ReportViews.PATH + "/{id}/photos")
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Reports")
public class PhotoResource {
  private final Photos photos;
  private final ApiRequest request;

  PhotoResource(Photos photos, ApiRequest request) {
    this.photos = photos;
    this.request = request;
  }

  @Keyed
  @POST
  @RolesAllowed(Role.WRITE)
  @Consumes({"image/jpeg", "image/png", "image/webp", MediaType.APPLICATION_OCTET_STREAM})
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "addReportPhoto",
      summary = "Add a picture",
      description =
          "JPEG, PNG or WebP, at most 10 MB and 40 million pixels. It is encoded anew without"
              + " metadata. Needs an Idempotency-Key.")
  @APIResponseSchema(value = PhotoJson.class, responseCode = "201")
  public Response add(@PathParam("id") UUID id, InputStream body) throws IOException {
    return store(id, body.readNBytes(ReportLimits.PHOTO_UPLOAD + 1));
  }

  @Keyed
  @POST
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.MULTIPART_FORM_DATA)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "addReportPhotoByForm",
      summary = "Add a picture from a form",
      description = "The part is named photo.")
  @APIResponseSchema(value = PhotoJson.class, responseCode = "201")
  public Response addPart(@PathParam("id") UUID id, @RestForm("photo") FileUpload part)
      throws IOException {
    if (part == null) {
      throw Problems.of(ProblemKind.INVALID_REQUEST, "Send the picture as the part named photo.")
          .exception();
    }
    try (InputStream body = Files.newInputStream(part.uploadedFile())) {
      return store(id, body.readNBytes(ReportLimits.PHOTO_UPLOAD + 1));
    }
  }

  private Response store(UUID id, byte[] upload) {
    Photos.Ready ready = Photos.ready(upload);
    return request.once(
        upload,
        () -> {
          PhotoJson photo = ReportViews.photo(photos.add(request.actor(), id, null, ready));
          return Response.created(URI.create(photo.url())).entity(photo).build();
        });
  }

  @GET
  @Path("{photo}")
  @RolesAllowed(Role.READ)
  @Produces("image/jpeg")
  @Operation(
      operationId = "getReportPhoto",
      summary = "A picture",
      description = "size=thumb answers the small one.")
  public Response get(
      @PathParam("id") UUID id, @PathParam("photo") UUID photo, @QueryParam("size") String size) {
    byte[] bytes = photos.bytes(request.actor(), id, photo, "thumb".equals(size));
    return Response.ok(bytes, "image/jpeg")
        .header("X-Content-Type-Options", "nosniff")
        .header("Content-Security-Policy", "default-src 'none'; sandbox")
        .header("Content-Disposition", "inline; filename=\"" + photo + ".jpg\"")
        // private: what may be seen today may be withdrawn tomorrow
        .header("Cache-Control", "private, max-age=3600")
        .build();
  }

  @DELETE
  @Path("{photo}")
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "removeReportPhoto", summary = "Take a picture away")
  public void remove(@PathParam("id") UUID id, @PathParam("photo") UUID photo) {
    photos.remove(request.actor(), id, photo);
  }
}

package club.emberwell.api.photo;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.PhotoJson;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.report.photo.PhotoWords;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** The pictures of an answer. */
@Path("/api/v1/answers/{id}/photos")
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Talk")
public class AnswerPhotoResource {
  private final PhotoRequests requests;

  AnswerPhotoResource(PhotoRequests requests) {
    this.requests = requests;
  }

  @GET
  @RolesAllowed(Role.READ)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "listAnswerPhotos",
      summary = "The pictures of an answer",
      description = "The first one stands for it in lists.")
  public ListJson<PhotoJson> list(@PathParam("id") UUID id) {
    return requests.list(EntryKind.ANSWER, id);
  }

  @Keyed
  @POST
  @RolesAllowed(Role.WRITE)
  @Consumes({"image/jpeg", "image/png", "image/webp", MediaType.APPLICATION_OCTET_STREAM})
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "addAnswerPhoto",
      summary = "Add a picture to an answer",
      description = PhotoRequests.ADDED)
  @APIResponseSchema(value = PhotoJson.class, responseCode = "201")
  public Response add(
      @PathParam("id") UUID id,
      @QueryParam("caption") String caption,
      @QueryParam("alt") String alt,
      InputStream body)
      throws IOException {
    return requests.add(EntryKind.ANSWER, id, new PhotoWords(caption, alt), body);
  }

  @Keyed
  @POST
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.MULTIPART_FORM_DATA)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "addAnswerPhotoByForm",
      summary = "Add a picture to an answer from a form",
      description = PhotoRequests.PART)
  @APIResponseSchema(value = PhotoJson.class, responseCode = "201")
  public Response addPart(
      @PathParam("id") UUID id,
      @RestForm("photo") FileUpload part,
      @RestForm("caption") String caption,
      @RestForm("alt") String alt)
      throws IOException {
    return requests.addPart(EntryKind.ANSWER, id, new PhotoWords(caption, alt), part);
  }

  @GET
  @Path("{photo}")
  @RolesAllowed(Role.READ)
  @Produces("image/jpeg")
  @Operation(
      operationId = "getAnswerPhoto",
      summary = "A picture of an answer",
      description = PhotoRequests.SIZES)
  public Response get(
      @PathParam("id") UUID id, @PathParam("photo") UUID photo, @QueryParam("size") String size) {
    return requests.get(EntryKind.ANSWER, id, photo, size);
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{photo}")
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "changeAnswerPhoto",
      summary = "Change what is said of a picture of an answer, and its place",
      description = PhotoRequests.CHANGED)
  @APIResponseSchema(PhotoJson.class)
  public Response change(
      @PathParam("id") UUID id, @PathParam("photo") UUID photo, PhotoChange sent) {
    return requests.change(EntryKind.ANSWER, id, photo, sent);
  }

  @DELETE
  @Path("{photo}")
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "removeAnswerPhoto", summary = "Take a picture of an answer away")
  public void remove(@PathParam("id") UUID id, @PathParam("photo") UUID photo) {
    requests.remove(EntryKind.ANSWER, id, photo);
  }
}

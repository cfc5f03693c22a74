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
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
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
import java.io.InputStream;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/**
 * The pictures of one kind of entries. Where the description names the kind, {@link
 * club.emberwell.api.contract.KindWords} puts it in.
 */
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
public abstract class PhotoResource {
  private final EntryKind kind;
  private final PhotoRequests requests;

  PhotoResource(EntryKind kind, PhotoRequests requests) {
    this.kind = kind;
    this.requests = requests;
  }

  @GET
  @Path("{id}/photos")
  @RolesAllowed(Role.READ)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "list{Kind}Photos",
      summary = "The pictures of {a kind}",
      description = "The first one stands for it in lists.")
  public ListJson<PhotoJson> list(@PathParam("id") UUID id) {
    return requests.list(kind, id);
  }

  @Keyed
  @POST
  @Path("{id}/photos")
  @RolesAllowed(Role.WRITE)
  @Consumes({"image/jpeg", "image/png", "image/webp", MediaType.APPLICATION_OCTET_STREAM})
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "add{Kind}Photo",
      summary = "Add a picture to {a kind}",
      description = PhotoRequests.ADDED)
  @APIResponseSchema(value = PhotoJson.class, responseCode = "201")
  @Fails(ProblemKind.PICTURES_BUSY)
  @Blocking
  public Uni<Response> add(
      @PathParam("id") UUID id,
      @QueryParam("caption") String caption,
      @QueryParam("alt") String alt,
      InputStream body) {
    return requests.add(kind, id, new PhotoWords(caption, alt), SentPicture.of(body));
  }

  @Keyed
  @POST
  @Path("{id}/photos")
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.MULTIPART_FORM_DATA)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "add{Kind}PhotoByForm",
      summary = "Add a picture to {a kind} from a form",
      description = PhotoRequests.PART)
  @APIResponseSchema(value = PhotoJson.class, responseCode = "201")
  @Fails(ProblemKind.PICTURES_BUSY)
  @Blocking
  public Uni<Response> addPart(
      @PathParam("id") UUID id,
      @RestForm("photo") FileUpload part,
      @RestForm("caption") String caption,
      @RestForm("alt") String alt) {
    return requests.addPart(kind, id, new PhotoWords(caption, alt), part);
  }

  @WithEtag
  @GET
  @Path("{id}/photos/{photo}")
  @RolesAllowed(Role.READ)
  @Produces("image/jpeg")
  @Operation(
      operationId = "get{Kind}Photo",
      summary = "A picture of {a kind}",
      description = PhotoRequests.SIZES)
  public Response get(
      @PathParam("id") UUID id, @PathParam("photo") UUID photo, @QueryParam("size") String size) {
    return requests.get(kind, id, photo, size);
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}/photos/{photo}")
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "change{Kind}Photo",
      summary = "Change what is said of a picture of {a kind}, and its place",
      description = PhotoRequests.CHANGED)
  @APIResponseSchema(PhotoJson.class)
  public Response change(
      @PathParam("id") UUID id, @PathParam("photo") UUID photo, PhotoChange sent) {
    return requests.change(kind, id, photo, sent);
  }

  @DELETE
  @Path("{id}/photos/{photo}")
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "remove{Kind}Photo", summary = "Take a picture of {a kind} away")
  public void remove(@PathParam("id") UUID id, @PathParam("photo") UUID photo) {
    requests.remove(kind, id, photo);
  }
}

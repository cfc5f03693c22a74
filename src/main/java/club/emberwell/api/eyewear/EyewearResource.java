package club.emberwell.api.eyewear;

import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.eyewear.Glasses;
import club.emberwell.eyewear.GlassesPosting;
import club.emberwell.eyewear.OwnEyewear;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
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

/** One's own glasses; nobody else's can be seen. */
@Path(EyewearResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Eyewear")
public class EyewearResource {
  static final String PATH = "/api/v1/eyewear";

  private final OwnEyewear eyewear;
  private final ApiRequest request;

  EyewearResource(OwnEyewear eyewear, ApiRequest request) {
    this.eyewear = eyewear;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listEyewear", summary = "My glasses, in the order they were added")
  public ListJson<EyewearJson> list() {
    return ListJson.of(eyewear.of(request.actor()).stream().map(EyewearJson::of).toList());
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "addEyewear",
      summary = "Write down what is printed on a pair of glasses",
      description =
          "Each line of the marking is read, such as OD 6+ @ 900-1070 nm, D 1064 LB6 or 180-315 D"
              + " LB10. Needs an Idempotency-Key.")
  @APIResponseSchema(value = EyewearJson.class, responseCode = "201")
  public Response add(EyewearRequest sent) {
    return request.once(
        sent,
        () -> {
          Glasses glasses =
              eyewear.add(request.actor(), new GlassesPosting(sent.id(), sent.written()));
          return answer(Response.created(URI.create(PATH + "/" + glasses.id())), glasses);
        });
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getEyewear", summary = "One of my pairs of glasses")
  @APIResponseSchema(value = EyewearJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), eyewear.get(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "reviseEyewear",
      summary = "Write a pair of glasses anew",
      description = "Needs If-Match.")
  @APIResponseSchema(value = EyewearJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, EyewearRequest sent) {
    return answer(
        Response.ok(), eyewear.revise(request.actor(), id, request.version(), sent.written()));
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "withdrawEyewear",
      summary = "Remove a pair of glasses",
      description = "It stays in the history. Heeds If-Match.")
  public void withdraw(@PathParam("id") UUID id) {
    eyewear.withdraw(request.actor(), id, request.versionIfGiven());
  }

  private static Response answer(Response.ResponseBuilder response, Glasses glasses) {
    return ApiRequest.answer(response, glasses.version(), EyewearJson.of(glasses));
  }
}

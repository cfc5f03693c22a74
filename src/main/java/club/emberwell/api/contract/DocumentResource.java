package club.emberwell.api.contract;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.Etags;
import club.emberwell.access.contract.ApiDocument;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** This very description. */
@Path(ApiPaths.BASE + "/openapi.json")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Description")
public class DocumentResource {
  private final ApiDocument document;

  DocumentResource(ApiDocument document) {
    this.document = document;
  }

  @WithEtag
  @GET
  @RolesAllowed(Role.READ)
  @Operation(operationId = "getDescription", summary = "The description of the API, OpenAPI 3.1")
  @APIResponseSchema(value = Map.class, responseCode = "200")
  public Response get() {
    return Response.ok(document.bytes())
        .header(HttpHeaders.ETAG, Etags.strong(document.tag()))
        .build();
  }
}

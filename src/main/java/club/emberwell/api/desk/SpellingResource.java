package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.supplier.SupplierSpelling;
import club.emberwell.desk.supplier.SupplierSpellings;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Which names of suppliers mean one. */
@Path("/api/v1/desk/supplier-spellings")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class SpellingResource {
  private final SupplierSpellings spellings;
  private final ApiRequest request;

  SpellingResource(SupplierSpellings spellings, ApiRequest request) {
    this.spellings = spellings;
    this.request = request;
  }

  /**
   * @param supplier name it counts as, or any spelling that is joined to that
   */
  @Schema(
      name = "SupplierSpellingRequest",
      requiredProperties = {"spelling", "supplier", "reason"})
  record Join(String spelling, String supplier, String reason) {}

  @GET
  @Operation(
      operationId = "listSupplierSpellings",
      summary = "Names that count as another supplier's, the last joined first")
  public ListJson<SupplierSpelling> joined(@BeanParam ListQuery list) {
    return ListJson.of(spellings.joined(request.actor(), list.part()));
  }

  @Keyed
  @POST
  @Operation(
      operationId = "joinSupplierSpelling",
      summary = "Make a name count as another supplier's",
      description =
          "Lots keep what their owners typed; ranks, counts and drift are those of all spellings"
              + " together. A name that others count as cannot be joined itself.")
  @APIResponseSchema(SupplierSpelling.class)
  public Response join(Join sent) {
    return request.did(
        sent,
        actor ->
            spellings.join(
                actor,
                new SupplierSpellings.Draft(sent.spelling(), sent.supplier(), sent.reason())));
  }

  @Keyed
  @POST
  @Path("{code}/part")
  @Operation(
      operationId = "partSupplierSpelling",
      summary = "Make a joined name a supplier of its own again")
  @APIResponse(responseCode = "204")
  public Response part(@RestPath String code, Why sent) {
    return request.done(sent, actor -> spellings.part(actor, code, sent.reason()));
  }
}

package club.emberwell.api.hook;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.PasswordAgain;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.hook.Delivery;
import club.emberwell.hook.Webhook;
import club.emberwell.hook.Webhooks;
import club.emberwell.member.Role;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Unproven;
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

/** Which addresses are told what happens here. */
@Path(WebhookResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.OWN)
@Tag(name = "Webhooks")
public class WebhookResource {
  static final String PATH = "/api/v1/webhooks";

  private final Webhooks hooks;
  private final ApiRequest request;
  private final ClientAddress client;

  WebhookResource(Webhooks hooks, ApiRequest request, ClientAddress client) {
    this.hooks = hooks;
    this.request = request;
    this.client = client;
  }

  @GET
  @Operation(operationId = "listWebhooks", summary = "All webhooks")
  public ListJson<WebhookJson> list() {
    return ListJson.of(hooks.all(request.actor()).stream().map(WebhookJson::of).toList());
  }

  @WithEtag
  @POST
  @Operation(
      operationId = "addWebhook",
      summary = "Add a webhook",
      description =
          "The secret is shown this once. Takes no Idempotency-Key: a secret is never kept."
              + " Deliveries are signed as the Standard Webhooks specification says.")
  @APIResponseSchema(value = WebhookJson.class, responseCode = "201")
  public Response add(WebhookRequest sent) {
    Webhook.Fresh made = hooks.add(request.actor(), sent.draft());
    return once(Response.created(URI.create(PATH + "/" + made.webhook().id())), made);
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getWebhook", summary = "One webhook")
  @APIResponseSchema(WebhookJson.class)
  public Response get(@PathParam("id") UUID id) {
    return answer(hooks.get(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "changeWebhook",
      summary = "Change a webhook, or switch it on or off",
      description = "Needs If-Match. What waits for one that is off is not sent.")
  @APIResponseSchema(WebhookJson.class)
  public Response change(@PathParam("id") UUID id, WebhookRequest sent) {
    int version = request.version();
    return answer(hooks.change(request.actor(), id, version, sent.draft()));
  }

  @DELETE
  @Path("{id}")
  @Operation(operationId = "removeWebhook", summary = "End a webhook with all that waits for it")
  public void remove(@PathParam("id") UUID id) {
    hooks.remove(request.actor(), id);
  }

  @WithEtag
  @POST
  @Path("{id}/secret")
  @Fails(ProblemKind.CONFIRMATION_REQUIRED)
  @Operation(
      operationId = "renewWebhookSecret",
      summary = "Give a webhook a new secret",
      description =
          "Shown this once. For a day the old one signs as well, so that none is lost meanwhile."
              + " A token alone is not enough: send your password. Takes no Idempotency-Key.")
  @APIResponseSchema(WebhookJson.class)
  public Response renewSecret(@PathParam("id") UUID id, PasswordAgain sent) {
    Given given = new Given(request.credential(), sent.password(), client.prefix());
    try {
      return once(Response.ok(), hooks.renewSecret(request.actor(), id, given));
    } catch (Unproven e) {
      throw new EntryRefused(RemarkId.PASSWORD_WRONG, "/password", e.getMessage());
    }
  }

  @POST
  @Path("{id}/test")
  @Consumes(MediaType.WILDCARD)
  @Fails(ProblemKind.INVALID_FIELDS)
  @Operation(
      operationId = "testWebhook",
      summary = "Have a test sent",
      description = "It is sent within seconds; the deliveries say what came of it. Takes no body.")
  @APIResponseSchema(value = DeliveryJson.class, responseCode = "202")
  public Response test(@PathParam("id") UUID id) {
    Delivery test = hooks.test(request.actor(), id);
    return Response.accepted(DeliveryJson.of(test)).build();
  }

  @GET
  @Path("{id}/deliveries")
  @Operation(
      operationId = "listWebhookDeliveries",
      summary = "What was sent to a webhook and what waits, newest first")
  public ListJson<DeliveryJson> deliveries(@PathParam("id") UUID id, @BeanParam ListQuery list) {
    return ListJson.of(hooks.deliveries(request.actor(), id, list.part()), DeliveryJson::of);
  }

  private static Response once(Response.ResponseBuilder response, Webhook.Fresh made) {
    return ApiRequest.answer(
        response.header("Cache-Control", "no-store"),
        made.webhook().version(),
        WebhookJson.of(made.webhook(), made.secret()));
  }

  private static Response answer(Webhook hook) {
    return ApiRequest.answer(Response.ok(), hook.version(), WebhookJson.of(hook));
  }
}

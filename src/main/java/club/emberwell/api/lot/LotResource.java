package club.emberwell.api.lot;

import club.emberwell.access.ReadsOnly;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.listing.Slice;
import club.emberwell.lot.Lot;
import club.emberwell.lot.LotPosting;
import club.emberwell.lot.Lots;
import club.emberwell.lot.drift.Drift;
import club.emberwell.lot.drift.LotDrifts;
import club.emberwell.lot.order.Order;
import club.emberwell.lot.order.Ordering;
import club.emberwell.lot.order.WrittenOrder;
import club.emberwell.member.Role;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.report.photo.KeptPhotos.Kept;
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
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One's own deliveries; nobody else's can be seen. */
@Path(LotResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Lots")
public class LotResource {
  static final String PATH = "/api/v1/lots";

  private final Lots lots;
  private final LotDrifts drifts;
  private final KeptPhotos photos;
  private final Ordering ordering;
  private final ApiRequest request;

  LotResource(
      Lots lots, LotDrifts drifts, KeptPhotos photos, Ordering ordering, ApiRequest request) {
    this.lots = lots;
    this.drifts = drifts;
    this.photos = photos;
    this.ordering = ordering;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listLots", summary = "My lots, the last received first")
  public ListJson<LotJson> list(@BeanParam ListQuery list) {
    Slice<Lot> found = lots.mine(request.actor(), list.part());
    Map<UUID, Drift> drift = drifts.mine(request.actor());
    Map<UUID, Kept> kept = photos.of(found.rows().stream().map(Lot::id).toList());
    return ListJson.of(found, lot -> LotJson.of(lot, drift.get(lot.id()), kept.get(lot.id())));
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "addLot",
      summary = "Write a delivery down",
      description = "Needs an Idempotency-Key.")
  @APIResponseSchema(value = LotJson.class, responseCode = "201")
  public Response add(LotRequest sent) {
    return request.once(
        sent,
        () -> {
          LotPosting posting = LotPosting.of(sent.id(), sent.written());
          Lot lot = lots.add(request.actor(), posting).thing();
          return answer(Response.created(URI.create(PATH + "/" + lot.id())), lot);
        });
  }

  @POST
  @Path("order")
  @ReadsOnly
  @Operation(
      operationId = "planOrder",
      summary = "How many to order so that enough are usable",
      description =
          "The smallest order of each line with which enough pieces of all lines are usable with"
              + " the chance wanted. Nothing is stored.")
  public Order order(WrittenOrder sent) {
    return ordering.order(request.actor(), sent);
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(
      operationId = "getLot",
      summary = "One of my lots",
      description =
          "The drift compares the right trials of my reports that name the lot with those of my"
              + " earlier lots of the same supplier, material, coating and colour, on the same"
              + " machine and work. Of 100 suppliers that never change, at most about 6 are flagged"
              + " within 20 lots.")
  @APIResponseSchema(value = LotJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), lots.get(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "reviseLot",
      summary = "Write a lot anew",
      description = "Needs If-Match.")
  @APIResponseSchema(value = LotJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, LotRequest sent) {
    return answer(
        Response.ok(), lots.revise(request.actor(), id, request.version(), sent.written()));
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "withdrawLot",
      summary = "Remove a lot",
      description = "It stays in the history and counts no more. Heeds If-Match.")
  public void withdraw(@PathParam("id") UUID id) {
    lots.withdraw(request.actor(), id, request.versionIfGiven());
  }

  private Response answer(Response.ResponseBuilder response, Lot lot) {
    LotJson json =
        LotJson.of(
            lot,
            drifts.of(request.actor(), lot.id()).orElse(null),
            photos.of(lot.id()).orElse(null));
    return ApiRequest.answer(response, lot.version(), json);
  }
}

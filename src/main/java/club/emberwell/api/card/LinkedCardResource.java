package club.emberwell.api.card;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ReportViews;
import club.emberwell.card.CardLinks;
import club.emberwell.card.CardLinks.Opened;
import club.emberwell.card.JobCards;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryUnknown;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** A job card for whoever has a link to it, without an account. */
@Path("/api/v1/cards")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Recipes")
public class LinkedCardResource {
  private final JobCards cards;
  private final CardLinks links;
  private final ReportViews words;
  private final ClientAddress client;

  LinkedCardResource(JobCards cards, CardLinks links, ReportViews words, ClientAddress client) {
    this.cards = cards;
    this.links = links;
    this.words = words;
    this.client = client;
  }

  @GET
  @Path("{link}")
  @PermitAll
  @Fails({ProblemKind.NOT_FOUND, ProblemKind.LINK_ENDED, ProblemKind.TOO_MANY_TRIES})
  @Operation(
      operationId = "getJobCardByLink",
      summary = "The job card that a link opens",
      description =
          "Needs no account: link is the secret at the end of the link. It follows the newest"
              + " revision; revision= names one that was printed, made no earlier than the link.")
  @APIResponseSchema(value = CardJson.class, responseCode = "200")
  public Response byLink(@PathParam("link") String link, @QueryParam("revision") Integer revision) {
    Opened opened = links.open(link, client.prefix());
    if (revision != null && revision < opened.since()) {
      throw new EntryUnknown("revision");
    }
    return Response.ok(
            CardJson.of(
                cards.of(opened.owner(), opened.recipe(), revision, NumberStyle.ANY), words))
        .header("Cache-Control", "no-store")
        .header("X-Robots-Tag", "noindex")
        .build();
  }
}

package club.emberwell.web.card;

import club.emberwell.access.ClientAddress;
import club.emberwell.card.CardLinks;
import club.emberwell.card.CardLinks.Opened;
import club.emberwell.card.JobCard;
import club.emberwell.card.JobCards;
import club.emberwell.entry.EntryKind;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/**
 * The job card that a link opens, for whoever has it. A phone may keep it, as it is needed where
 * there is no connection; nobody else is told its address.
 */
@Path("/cards/{link}")
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class LinkedCardPages extends Pages {
  private final JobCards cards;
  private final CardLinks links;
  private final CardViews views;
  private final KeptPhotos photos;
  private final ClientAddress client;

  LinkedCardPages(
      JobCards cards, CardLinks links, CardViews views, KeptPhotos photos, ClientAddress client) {
    this.cards = cards;
    this.links = links;
    this.views = views;
    this.photos = photos;
    this.client = client;
  }

  /**
   * @param revision as printed on a card; null = the newest
   */
  @GET
  public Response card(
      @RestPath String link, @RestQuery Integer revision, @Context UriInfo address) {
    Opened opened = links.open(link, client.prefix());
    if (revision != null && revision < opened.since()) {
      throw new EntryUnknown("revision");
    }
    UnitPreferences reader =
        actor().signedIn() ? actor().units() : CardUnits.of(address.getQueryParameters());
    JobCard card = cards.of(opened.owner(), opened.recipe(), revision, reader.style());
    String path = CardLinks.path(link);
    Form units = actor().signedIn() ? null : CardUnits.form(reader);
    CardView view = views.of(card, reader, path, path + "/photo.jpg");
    return hidden(Response.ok(CardPages.Templates.linked(view, path, units)));
  }

  private static Response hidden(Response.ResponseBuilder answer) {
    return answer
        .header("X-Robots-Tag", "noindex")
        .header("Referrer-Policy", "no-referrer")
        .build();
  }

  /** The photo of the fixture that the card names. */
  @GET
  @Path("photo.jpg")
  @Produces("image/jpeg")
  public Response photo(@RestPath String link) {
    Opened opened = links.open(link, client.prefix());
    JobCard card = cards.of(opened.owner(), opened.recipe(), null, opened.owner().units().style());
    if (card.lies() == null) {
      throw new EntryUnknown("photo");
    }
    byte[] jpeg = photos.bytes(opened.owner(), EntryKind.FIXTURE, card.lies().fixture().id());
    return hidden(
        Response.ok(jpeg)
            .header("Content-Length", jpeg.length)
            .header("Content-Security-Policy", "sandbox; default-src 'none'")
            .header("Cache-Control", "private, no-cache"));
  }
}

package club.emberwell.web.card;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.PublicUrl;
import club.emberwell.card.CardLinks;
import club.emberwell.card.CardLinks.Fresh;
import club.emberwell.card.CardLinks.Link;
import club.emberwell.card.JobCard;
import club.emberwell.card.JobCards;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.Recipes;
import club.emberwell.tag.QrCode;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The job card of one's own recipe, and the links by which helpers read it. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class CardPages extends Pages {
  private static final String OF_RECIPE = "recipes/{id}";

  private final JobCards cards;
  private final CardLinks links;
  private final CardViews views;
  private final Recipes recipes;
  private final PublicUrl url;

  CardPages(JobCards cards, CardLinks links, CardViews views, Recipes recipes, PublicUrl url) {
    this.cards = cards;
    this.links = links;
    this.views = views;
    this.recipes = recipes;
    this.url = url;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance own(CardView card, UUID recipe);

    static native TemplateInstance linked(CardView card, String link, Form units);

    static native TemplateInstance links(Head recipe, List<Link> links, Form form);

    static native TemplateInstance made(Head recipe, String link, String path, QrCode square);
  }

  /** Which recipe it is. */
  record Head(UUID id, String name) {}

  static String path(UUID recipe) {
    return "/recipes/" + recipe;
  }

  /**
   * @param revision null = the newest
   */
  @GET
  @Path(OF_RECIPE + "/card")
  public TemplateInstance own(@RestPath UUID id, @RestQuery Integer revision) {
    Actor actor = actor();
    JobCard card = cards.of(actor, id, revision, actor.units().style());
    String photo =
        card.lies() == null ? null : "/fixtures/" + card.lies().fixture().id() + "/photo.jpg";
    return Templates.own(views.of(card, actor.units(), path(id) + "/card", photo), id);
  }

  @GET
  @Path(OF_RECIPE + "/links")
  public TemplateInstance links(@RestPath UUID id, @RestQuery String done) {
    say(done, "Ended. Whoever opens it is told so.");
    return shown(id, new Form());
  }

  private TemplateInstance shown(UUID id, Form form) {
    return Templates.links(head(id), links.of(actor(), id), form);
  }

  private Head head(UUID id) {
    Recipe recipe = recipes.get(actor(), id);
    return new Head(id, recipe.name());
  }

  @POST
  @Path(OF_RECIPE + "/links")
  public Response make(@RestPath UUID id) {
    return press(Form::new, form -> shown(id, form))
        .store(s -> links.make(actor(), id))
        .showOnce(fresh -> made(id, fresh));
  }

  private TemplateInstance made(UUID id, Fresh fresh) {
    String link = url.of(fresh.path());
    return Templates.made(head(id), link, fresh.path(), QrCode.of(link));
  }

  @AtAnyPace
  @POST
  @Path(OF_RECIPE + "/links/{link}/end")
  public Response end(@RestPath UUID id, @RestPath UUID link) {
    links.end(actor(), id, link);
    return to(path(id) + "/links?done=ended");
  }
}

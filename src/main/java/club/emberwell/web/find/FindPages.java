package club.emberwell.web.find;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.search.query.SearchQueryCodec.Parsed;
import club.emberwell.web.answer.AnswerViews;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.outside.FeedPages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Set;
import java.util.UUID;

/** Find settings: the first page, whose address is its whole state. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class FindPages extends Pages {
  private final FindViews views;
  private final AnswerViews answers;
  private final CatalogService catalog;

  FindPages(FindViews views, AnswerViews answers, CatalogService catalog) {
    this.views = views;
    this.answers = answers;
    this.catalog = catalog;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance find(FindView view);
  }

  private static Preview preview(SearchQuery query, FindView view) {
    String feed =
        query.isEverything()
            ? null
            : FeedPages.RESULTS + "?" + SearchQueryCodec.write(query.withPage(0));
    return Preview.of(FindView.address(query), view.getDescription())
        .withDrawn(
            view.answer().panels().isEmpty()
                ? null
                : "/preview/range.png?" + SearchQueryCodec.write(query.withPage(0)))
        .withFeed(feed)
        .listedIf(query.isOneChoice())
        .listedIf(query.isEverything() || !view.found().hits().isEmpty());
  }

  @GET
  @RolesAllowed(Role.READ)
  public TemplateInstance find(@Context UriInfo uri) {
    Actor actor = actor();
    Parsed parsed =
        SearchQueryCodec.read(
            uri.getQueryParameters(),
            catalog.snapshot().vocabulary(),
            Set.of(AnswerViews.MACHINE),
            actor.units().style());
    UUID machine =
        answers
            .machine(uri.getQueryParameters().getFirst(AnswerViews.MACHINE), actor)
            .or(() -> answers.machine(parsed.query().near(), actor))
            .orElse(null);
    FindView view = views.of(parsed, machine, actor);
    if (parsed.problems().isEmpty()) {
      page.preview(preview(parsed.query().unordered(), view));
    }
    return Templates.find(view);
  }
}

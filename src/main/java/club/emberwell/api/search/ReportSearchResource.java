package club.emberwell.api.search;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ReportViews;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.search.SearchResult;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.SearchQuery;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Finding reports. */
@Path(ReportViews.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Reports")
public class ReportSearchResource {
  private static final String CURSOR = "cursor";

  private final SearchService search;
  private final SearchRequests requests;
  private final ReportViews views;
  private final CurrentActor actor;

  ReportSearchResource(
      SearchService search, SearchRequests requests, ReportViews views, CurrentActor actor) {
    this.search = search;
    this.requests = requests;
    this.views = views;
    this.actor = actor;
  }

  private static String cursor(UriInfo uri, SearchQuery query) {
    String cursor = uri.getQueryParameters().getFirst(CURSOR);
    if (cursor != null && query.page() > 0) {
      throw Problems.at(ProblemKind.INVALID_PARAMETER, "/" + CURSOR, "Send either cursor or page.")
          .exception();
    }
    return cursor;
  }

  @GET
  @RolesAllowed(Role.READ)
  @FromIndex
  @WithEtag
  @Operation(
      operationId = "searchReports",
      summary = "Find reports",
      description =
          "A repeated parameter means OR inside a facet, different ones mean AND; a facet's counts"
              + " ignore its own choice. Limits carry their unit (speedMin=12 in/s). At most 1000"
              + " pages of at most 100 hits.")
  public SearchJson find(@Context UriInfo uri) {
    SearchQuery query = requests.read(uri, Set.of(CURSOR));
    SearchService.Page page = search.page(query, actor.get(), cursor(uri, query));
    SearchResult result = page.result();
    List<SearchJson.Hit> hits =
        result.hits().stream()
            .map(hit -> new SearchJson.Hit(views.hit(hit.report()), hit.trials()))
            .toList();
    return SearchJson.of(page, hits, requests.cautions(query));
  }
}

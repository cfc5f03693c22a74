package club.emberwell.web.outside;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.Problems;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.remark.Remarks;
import club.emberwell.search.SearchResult.Hit;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.QueryLabel;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.search.query.SearchQueryCodec.Parsed;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.watch.Feed;
import club.emberwell.talk.watch.Find;
import club.emberwell.talk.watch.Watches;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.outside.AtomFeed.Head;
import club.emberwell.web.outside.AtomFeed.Publisher;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/**
 * Feeds: of all new results, of those a search finds, of all new questions, and of watches. The
 * secret in a watch's address is the leave to read it, as readers of feeds sign in nowhere; the
 * others are read by whoever may read the pages.
 */
@Path("/feeds")
@Produces(AtomFeed.TYPE)
@Blocking
public class FeedPages extends Pages {
  /** Of results; takes the parameters of the search. */
  public static final String RESULTS = "/feeds/results.atom";

  private static final String QUESTIONS = "/feeds/questions.atom";

  /** Entries of a feed. */
  private static final int ENTRIES = 30;

  private final Watches watches;
  private final SearchService search;
  private final TalkFinder talk;
  private final FeedItems items;
  private final CatalogService catalog;
  private final ClubOptions club;
  private final PublicUrl url;

  FeedPages(
      Watches watches,
      SearchService search,
      TalkFinder talk,
      FeedItems items,
      CatalogService catalog,
      ClubOptions club,
      PublicUrl url) {
    this.watches = watches;
    this.search = search;
    this.talk = talk;
    this.items = items;
    this.catalog = catalog;
    this.club = club;
    this.url = url;
  }

  @GET
  @Path("results.atom")
  @RolesAllowed(Role.READ)
  public Response results(
      @Context UriInfo uri, @Context Request request, @Context HttpHeaders headers) {
    Parsed parsed = SearchQueryCodec.read(uri.getQueryParameters(), catalog.vocabulary(), Set.of());
    Remarks.refuse(parsed.problems());
    SearchQuery query = parsed.query().unordered();
    String parameters = SearchQueryCodec.write(query.withPage(0));
    String behind = parameters.isEmpty() ? "" : "?" + parameters;
    String title =
        query.isEverything()
            ? "New results"
            : "New results: " + QueryLabel.of(query, catalog.vocabulary());
    List<FeedItem> found =
        items.results(
            search
                .search(query.withSort(Order.NEWEST.code()).withSize(ENTRIES), actor())
                .hits()
                .stream()
                .map(Hit::report)
                .toList());
    return answer(head(title, RESULTS + behind, "/" + behind), found, request, headers);
  }

  @GET
  @Path("questions.atom")
  @RolesAllowed(Role.READ)
  public Response questions(@Context Request request, @Context HttpHeaders headers) {
    List<FeedItem> found = items.talk(talk.newest(EntryKind.QUESTION, ENTRIES));
    return answer(head("New questions", QUESTIONS, "/ask"), found, request, headers);
  }

  /** A feed with nothing in it yet has not changed since time began. */
  private Head head(String title, String self, String alternate) {
    byte[] address = url.of(self).getBytes(StandardCharsets.UTF_8);
    String id = "urn:uuid:" + UUID.nameUUIDFromBytes(address);
    return new Head(id, title, self, alternate, Instant.EPOCH);
  }

  @GET
  @Path("{token}.atom")
  @PermitAll
  public Response watch(
      @RestPath String token, @Context Request request, @Context HttpHeaders headers) {
    Feed feed = watches.feed(token).orElseThrow(() -> Problems.notFound().exception());
    Head head =
        new Head(
            "urn:uuid:" + feed.watchId(),
            feed.label(),
            "/feeds/" + token + ".atom",
            feed.query().isEmpty() ? "/" : "/?" + feed.query(),
            feed.createdAt());
    return answer(head, items.of(feed.finds().stream().map(Find::ref).toList()), request, headers);
  }

  private Response answer(Head head, List<FeedItem> found, Request request, HttpHeaders headers) {
    Publisher publisher = new Publisher(club.clubName(), club.card().licence());
    return Unchanged.or(
            AtomFeed.of(head, publisher, found, url::of),
            AtomFeed.updated(head, found),
            request,
            headers)
        .header("X-Robots-Tag", "noindex")
        .build();
  }
}

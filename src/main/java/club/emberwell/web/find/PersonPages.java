package club.emberwell.web.find;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.KnownWork;
import club.emberwell.consensus.WorkQuery;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.search.SearchResult;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.range.RangeView;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;

/** A member as other members see them: what they know, on which lasers, and their results. */
@Path("/members")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class PersonPages extends Pages {
  private static final int WORKS = 8;
  private static final int REPORTS = 10;

  private final Members members;
  private final SearchService search;
  private final ConsensusService consensus;
  private final CatalogService catalog;

  PersonPages(
      Members members, SearchService search, ConsensusService consensus, CatalogService catalog) {
    this.members = members;
    this.search = search;
    this.consensus = consensus;
    this.catalog = catalog;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance person(Person person);
  }

  /**
   * @param lasers described in their newest results
   * @param works they had right results with, most tests first
   * @param counted how many results there are, in words
   * @param all address of them all
   */
  record Person(
      String handle,
      Instant since,
      List<String> lasers,
      List<Known> works,
      String counted,
      List<HitView> hits,
      String all) {}

  /** A work they know. */
  record Known(String words, String how, String tests, String href) {}

  static String address(String handle) {
    return "/members/" + URLEncoder.encode(handle, StandardCharsets.UTF_8);
  }

  @GET
  @Path("{handle}")
  @RolesAllowed(Role.READ)
  public TemplateInstance person(@RestPath String handle) {
    MemberView member = members.byHandle(handle).orElseThrow(() -> new EntryUnknown("member"));
    SearchQuery theirs =
        SearchQuery.everything()
            .withFacet(Facet.MEMBER.code(), List.of(member.handle()))
            .withSort(Order.NEWEST.code())
            .withSize(REPORTS);
    SearchResult found = search.search(theirs, actor());
    List<HitView> hits =
        found.hits().stream()
            .map(hit -> HitView.of(hit, catalog.snapshot(), actor().units()))
            .toList();
    String counted = RangeView.counted(found.totalReports(), "result", "results");
    page.preview(
        Preview.of(
                address(member.handle()),
                member.handle() + ", member of " + page.getClubName() + ": " + counted + ".")
            .listedIf(false));
    return Templates.person(
        new Person(
            member.handle(),
            member.standing().since(),
            hits.stream().map(hit -> hit.posted().laser()).distinct().toList(),
            consensus.known(theirs).stream().limit(WORKS).map(this::known).toList(),
            counted,
            hits,
            FindView.address(
                SearchQuery.everything()
                    .withFacet(Facet.MEMBER.code(), List.of(member.handle())))));
  }

  private Known known(KnownWork work) {
    return new Known(
        work.key().work().words(),
        work.key().process().label() + ", " + work.key().laser(),
        work.right() + " of " + RangeView.counted(work.trials(), "test", "tests") + " right",
        "/range?" + SearchQueryCodec.write(WorkQuery.of(work.key(), catalog.vocabulary())));
  }
}

package club.emberwell.web.range;

import club.emberwell.bench.Machines;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.SideBySide;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.search.query.QueryCautions;
import club.emberwell.search.query.QueryLabel;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** A range in full: window, machines, camps, contrasts, the reader's machine; and a comparison. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.READ)
public class RangePages extends Pages {
  private static final String MACHINE = "machine";
  private static final String SPACING = "spacing";
  private static final String ADD = "add";
  private static final String WITH = "with";

  private final ConsensusService consensus;
  private final CatalogService catalog;
  private final Machines machines;

  RangePages(ConsensusService consensus, CatalogService catalog, Machines machines) {
    this.consensus = consensus;
    this.catalog = catalog;
    this.machines = machines;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance compare(ComparePage page);
  }

  /**
   * @param remarks what keeps the columns from being compared straight away
   * @param cautions of all that is compared
   * @param adding the search that is compared, for the form that adds one more
   */
  record ComparePage(
      List<String> problems,
      List<String> remarks,
      CautionsView cautions,
      List<Column> columns,
      List<String> with,
      boolean room) {}

  /**
   * One combination.
   *
   * @param range the work with most members
   * @param others how many more works it has
   * @param all address of the list of them
   */
  record Column(
      String query, String href, RangeView range, int others, String all, String without) {}

  private CautionsView cautions(Stream<Caution> cautions, Actor actor) {
    return CautionsView.of(Cautions.once(cautions), catalog.snapshot().vocabulary(), actor.units());
  }

  @GET
  @Path("compare")
  public TemplateInstance compare(@Context UriInfo uri) {
    MultivaluedMap<String, String> sent = uri.getQueryParameters();
    Actor actor = actor();
    List<String> wanted = new ArrayList<>(sent.getOrDefault(WITH, List.of()));
    String add = sent.getFirst(ADD);
    if (add != null && !add.isBlank()) {
      wanted.add(SearchQueryCodec.TEXT + "=" + QueryString.encoded(add.strip()));
    }
    List<String> problems = new ArrayList<>();
    List<SearchQuery> queries = new ArrayList<>();
    for (String one : wanted.stream().distinct().toList()) {
      SearchQueryCodec.Parsed parsed = read(QueryString.parse(one), actor);
      parsed.problems().forEach(problem -> problems.add(problem.detail()));
      if (queries.size() == ConsensusLimits.MOST_COMPARED) {
        problems.add(
            "At most " + ConsensusLimits.MOST_COMPARED + " combinations stand side by side.");
        break;
      }
      queries.add(parsed.query().withPage(0));
    }
    List<String> with = queries.stream().map(SearchQueryCodec::write).toList();
    CautionsView cautions =
        cautions(
            queries.stream().flatMap(query -> QueryCautions.of(query, catalog.snapshot()).stream()),
            actor);
    if (queries.size() < ConsensusLimits.FEWEST_COMPARED) {
      return Templates.compare(
          new ComparePage(problems, List.of(), cautions, List.of(), with, true));
    }
    SideBySide found = consensus.compare(queries);
    CautionsView all =
        cautions(
            Stream.concat(
                queries.stream().flatMap(q -> QueryCautions.of(q, catalog.snapshot()).stream()),
                found.entries().stream().flatMap(entry -> entry.cautions().stream())),
            actor);
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < queries.size(); i++) {
      SideBySide.Entry entry = found.entries().get(i);
      String self = with.get(i);
      String id = "c" + i;
      columns.add(
          new Column(
              words(entry.query()),
              "/?" + self,
              entry.range().map(r -> RangeView.of(r, actor.units(), id, found.axes())).orElse(null),
              entry.others(),
              "/range?" + self,
              "/compare?"
                  + String.join(
                      "&",
                      with.stream()
                          .filter(w -> !w.equals(self))
                          .map(w -> WITH + "=" + QueryString.encoded(w))
                          .toList())));
    }
    return Templates.compare(
        new ComparePage(
            problems,
            found.remarks(),
            all,
            columns,
            with,
            queries.size() < ConsensusLimits.MOST_COMPARED));
  }

  private String words(SearchQuery query) {
    return QueryLabel.of(query, catalog.vocabulary());
  }

  private SearchQueryCodec.Parsed read(Map<String, List<String>> sent, Actor actor) {
    return SearchQueryCodec.read(
        sent, catalog.snapshot().vocabulary(), Set.of(MACHINE, SPACING), actor.units().style());
  }
}

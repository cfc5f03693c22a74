package club.emberwell.api.search;

import club.emberwell.access.problem.Problem;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.CautionJson;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.remark.Remark;
import club.emberwell.search.query.QueryCautions;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Reads the search parameters of a request, for every resource that takes them. */
@ApplicationScoped
public class SearchRequests {
  /** Longest query string inside a parameter, characters. */
  private static final int LONGEST = 4000;

  private final CatalogService catalog;

  SearchRequests(CatalogService catalog) {
    this.catalog = catalog;
  }

  /**
   * The query of an address.
   *
   * @param others parameters of the resource itself
   * @throws club.emberwell.access.problem.ProblemException 400 with a pointer for each parameter
   *     that cannot be read; 422 where the only trouble is a quantity that could mean two things
   */
  public SearchQuery read(UriInfo uri, Set<String> others) {
    SearchQueryCodec.Parsed parsed =
        SearchQueryCodec.read(uri.getQueryParameters(), catalog.vocabulary(), others);
    if (parsed.problems().isEmpty()) {
      return parsed.query();
    }
    throw problem(parsed.problems()).exception();
  }

  /** The cautions of what a query asks for, typed or chosen; none says nothing about safety. */
  public List<CautionJson> cautions(SearchQuery query) {
    return QueryCautions.of(query, catalog.snapshot()).stream().map(CautionJson::of).toList();
  }

  /**
   * These and those of what was found.
   *
   * @param found heaviest first
   */
  public List<CautionJson> cautions(SearchQuery query, List<Caution> found) {
    return Cautions.once(
            Stream.concat(QueryCautions.of(query, catalog.snapshot()).stream(), found.stream()))
        .stream()
        .map(CautionJson::of)
        .toList();
  }

  /**
   * The query that stands in a parameter, encoded.
   *
   * @param parameter its name, for the pointers
   */
  public SearchQuery read(String encoded, String parameter) {
    if (encoded.length() > LONGEST) {
      throw Problems.at(
              ProblemKind.INVALID_PARAMETER, "/" + parameter, "At most " + LONGEST + " characters.")
          .exception();
    }
    SearchQueryCodec.Parsed parsed =
        SearchQueryCodec.read(QueryString.parse(encoded), catalog.vocabulary(), Set.of());
    if (parsed.problems().isEmpty()) {
      return parsed.query();
    }
    throw problem(parsed.problems().stream().map(r -> r.at("/" + parameter + r.field())).toList())
        .exception();
  }

  private static Problem problem(List<Remark> problems) {
    if (problems.stream().allMatch(SearchQueryCodec::isOfQuantity)) {
      return Problems.of(problems);
    }
    List<Problem.Fault> faults =
        problems.stream()
            .map(remark -> new Problem.Fault(remark.field(), remark.detail(), remark.readings()))
            .toList();
    String detail = faults.get(0).pointer().substring(1) + ": " + faults.get(0).detail();
    return Problems.of(ProblemKind.INVALID_PARAMETER, detail, faults);
  }
}

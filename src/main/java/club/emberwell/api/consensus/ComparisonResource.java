package club.emberwell.api.consensus;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.search.FromIndex;
import club.emberwell.api.search.SearchRequests;
import club.emberwell.api.view.CautionJson;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.SideBySide;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.member.Role;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Two to four combinations side by side. */
@Path("/api/v1/comparison")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Consensus")
public class ComparisonResource {
  private static final String WITH = "with";

  private final ConsensusService consensus;
  private final SearchRequests requests;

  ComparisonResource(ConsensusService consensus, SearchRequests requests) {
    this.consensus = consensus;
    this.requests = requests;
  }

  /**
   * @param axes the stretch each measure takes over all searches, by its word in ranges
   * @param remarks what keeps them from being compared straight away
   */
  public record Comparison(
      List<Entry> searches, Map<String, AxisJson> axes, List<String> remarks) {}

  /**
   * One combination.
   *
   * @param query in its one form
   * @param range left out where nothing was found
   * @param cautions of what is asked for
   * @param others further ranges it has, of other processes, wavelengths or regimes
   */
  @Schema(name = "ComparedSearch")
  public record Entry(
      String query, @Nullable RangeJson range, int others, List<CautionJson> cautions) {}

  /** Ends of an axis in its unit; no unit = a bare number. */
  @Schema(name = "ComparedAxis")
  public record AxisJson(double low, double high, boolean logarithmic, @Nullable String unit) {}

  @GET
  @RolesAllowed(Role.READ)
  @FromIndex
  @WithEtag
  @Operation(
      operationId = "compareSearches",
      summary = "Ranges of two to four searches side by side",
      description =
          "Each parameter with holds the query string of a search of reports, encoded. Doses of"
              + " different wavelengths or regimes stand beside each other; none carries over.")
  @Fails({ProblemKind.INVALID_FIELDS, ProblemKind.AMBIGUOUS_QUANTITY, ProblemKind.INDEX_NOT_READY})
  public Comparison compare(@RestQuery(WITH) List<String> with) {
    if (with.size() < ConsensusLimits.FEWEST_COMPARED
        || with.size() > ConsensusLimits.MOST_COMPARED) {
      throw Problems.at(
              ProblemKind.INVALID_PARAMETER, "/" + WITH, "Two to four searches are compared.")
          .exception();
    }
    List<SearchQuery> queries = with.stream().map(one -> requests.read(one, WITH)).toList();
    SideBySide found = consensus.compare(queries);
    Map<String, AxisJson> axes = new LinkedHashMap<>();
    found.axes().forEach((measure, axis) -> axes.put(measure.code(), axis(measure, axis)));
    return new Comparison(
        found.entries().stream().map(this::entry).toList(), axes, found.remarks());
  }

  private Entry entry(SideBySide.Entry entry) {
    return new Entry(
        SearchQueryCodec.write(entry.query()),
        entry
            .range()
            .map(range -> RangeJson.of(RangeDetail.core(range), null, Map.of()))
            .orElse(null),
        entry.others(),
        requests.cautions(entry.query(), entry.cautions()));
  }

  private static AxisJson axis(Measure measure, SideBySide.Axis axis) {
    String unit = measure.dimension().map(QuantityKind::canonicalUnit).orElse(null);
    return new AxisJson(axis.low(), axis.high(), axis.logarithmic(), unit);
  }
}

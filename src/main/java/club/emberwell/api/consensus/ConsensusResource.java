package club.emberwell.api.consensus;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.search.FromIndex;
import club.emberwell.api.search.SearchRequests;
import club.emberwell.api.view.CautionJson;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.member.Role;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Reading;
import club.emberwell.report.ReportBrief;
import club.emberwell.report.ReportBriefs;
import club.emberwell.search.query.SearchQuery;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What peers' right results say. */
@Path("/api/v1/consensus")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Consensus")
public class ConsensusResource {
  private static final String MACHINE = "machine";
  private static final String SPACING = "spacing";
  private static final String EXPLAIN = "explain";

  private final ConsensusService consensus;
  private final SearchRequests requests;
  private final CurrentActor actor;
  private final ReportBriefs reports;

  ConsensusResource(
      ConsensusService consensus,
      SearchRequests requests,
      CurrentActor actor,
      ReportBriefs reports) {
    this.reports = reports;
    this.consensus = consensus;
    this.requests = requests;
    this.actor = actor;
  }

  /**
   * The ranges, most voices first.
   *
   * @param cautions of what is asked for, whether or not anything was found
   */
  @Schema(name = "Consensus")
  public record Ranges(List<RangeJson> groups, List<CautionJson> cautions) {}

  @GET
  @RolesAllowed(Role.READ)
  @FromIndex
  @WithEtag
  @Operation(
      operationId = "getConsensus",
      summary = "Ranges over what a search finds",
      description =
          "One for each process, wavelength band and pulse regime, which are never mixed; each"
              + " member counts once. Takes every filter of the search of reports. It describes what"
              + " peers did; nothing here is a recommendation or says that something is safe.")
  @Parameter(
      name = MACHINE,
      in = ParameterIn.QUERY,
      description = "One of your machines: what the range means there",
      schema = @Schema(type = SchemaType.STRING))
  @Parameter(
      name = SPACING,
      in = ParameterIn.QUERY,
      description = "Line spacing on that machine, with its unit; peers' middle where left out",
      schema = @Schema(type = SchemaType.STRING))
  @Parameter(
      name = EXPLAIN,
      in = ParameterIn.QUERY,
      description = "true: which voices, formula and source stand behind every number",
      schema = @Schema(type = SchemaType.BOOLEAN))
  public Ranges ranges(@Context UriInfo uri) {
    SearchQuery query = requests.read(uri, Set.of(MACHINE, SPACING, EXPLAIN));
    UUID machine = machine(uri);
    ConsensusService.Ask ask =
        new ConsensusService.Ask(query, actor.get(), machine, spacing(uri), explain(uri));
    try {
      List<RangeDetail> details = consensus.details(ask);
      Map<Long, ReportBrief> named =
          reports.live(
              details.stream()
                  .flatMap(detail -> detail.answer().stream())
                  .flatMap(AnswerJson::reports)
                  .toList());
      return new Ranges(
          details.stream().map(detail -> RangeJson.of(detail, machine, named)).toList(),
          requests.cautions(query));
    } catch (EntryUnknown e) {
      throw Problems.at(ProblemKind.INVALID_PARAMETER, "/" + MACHINE, "You have no such machine.")
          .exception();
    }
  }

  private static Optional<String> single(UriInfo uri, String name) {
    List<String> given =
        uri.getQueryParameters().getOrDefault(name, List.of()).stream()
            .filter(value -> !value.isBlank())
            .toList();
    if (given.size() > 1) {
      throw Problems.at(ProblemKind.INVALID_PARAMETER, "/" + name, "This parameter is given once.")
          .exception();
    }
    return given.stream().findFirst().map(String::strip);
  }

  private static UUID machine(UriInfo uri) {
    try {
      return single(uri, MACHINE).map(UUID::fromString).orElse(null);
    } catch (IllegalArgumentException e) {
      throw Problems.at(
              ProblemKind.INVALID_PARAMETER, "/" + MACHINE, "This is the id of a machine.")
          .exception();
    }
  }

  private static boolean explain(UriInfo uri) {
    String given = single(uri, EXPLAIN).orElse("false");
    if (!given.equals("true") && !given.equals("false")) {
      throw Problems.at(ProblemKind.INVALID_PARAMETER, "/" + EXPLAIN, "Either true or false.")
          .exception();
    }
    return given.equals("true");
  }

  private static Double spacing(UriInfo uri) {
    Optional<String> given = single(uri, SPACING);
    if (given.isEmpty()) {
      return null;
    }
    Reading<Quantity> reading =
        QuantityReader.read(QuantityKind.LINE_SPACING, given.get()).at("/" + SPACING);
    return reading
        .value()
        .map(Quantity::doubleValue)
        .orElseThrow(() -> Problems.of(reading.remarks()).exception());
  }
}

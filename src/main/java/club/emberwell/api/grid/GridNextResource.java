package club.emberwell.api.grid;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.Sendable;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.grid.next.NextTests;
import club.emberwell.grid.next.Proposal;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.member.Role;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.report.reading.ReportCautions;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What to burn next after a grid. */
@Path("/api/v1/grids/{id}/next")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Grids")
public class GridNextResource {
  private final NextTests next;
  private final CatalogService catalog;
  private final ApiRequest request;

  GridNextResource(NextTests next, CatalogService catalog, ApiRequest request) {
    this.next = next;
    this.catalog = catalog;
    this.request = request;
  }

  /**
   * What to burn next.
   *
   * @param window by now on this machine; left out where nothing can be said of it
   * @param tests least dose first
   * @param next a grid of them, as it can be sent to /plan; left out without tests
   * @param sentences what there is to say of it
   * @param cautionCodes ids of the work's cautions from special care on, the heaviest first
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record NextJson(
      UUID grid,
      @Nullable WindowJson window,
      List<TestJson> tests,
      @JsonSerialize(using = Sendable.class) @Nullable WrittenGrid next,
      List<String> sentences,
      List<String> cautionCodes) {
    static NextJson of(Proposal found, Cautions cautions) {
      QuantityKind kind = found.process().doseKind().quantity();
      return new NextJson(
          found.grid().id(),
          found.window().map(window -> WindowJson.of(window, kind)).orElse(null),
          found.tests().stream().map(test -> TestJson.of(test, kind)).toList(),
          found.next().orElse(null),
          found.said(),
          CautionMark.of(ReportCautions.asWritten(found.grid().written().work(), cautions))
              .map(CautionMark::codes)
              .orElse(List.of()));
    }
  }

  /**
   * Both ends of the doses that come out right.
   *
   * @param basis what was known before these tests
   * @param judged tests that count
   * @param narrower how uncertain the ends are expected to be after the next tests, as a share of
   *     now
   */
  record WindowJson(
      EndJson lower, EndJson upper, Proposal.Basis basis, int judged, BigDecimal narrower) {
    static WindowJson of(Proposal.Known window, QuantityKind kind) {
      return new WindowJson(
          EndJson.of(window.lower(), kind),
          EndJson.of(window.upper(), kind),
          window.basis(),
          window.tests(),
          QuantityJson.number(window.narrower()));
    }
  }

  /**
   * One end.
   *
   * @param low of its 95 % interval
   */
  record EndJson(QuantityJson dose, QuantityJson low, QuantityJson high) {
    static EndJson of(Proposal.Edge edge, QuantityKind kind) {
      return new EndJson(
          QuantityJson.of(kind, edge.dose()),
          QuantityJson.of(kind, edge.interval().low()),
          QuantityJson.of(kind, edge.interval().high()));
    }
  }

  /**
   * A test to burn.
   *
   * @param chance that it comes out right
   */
  record TestJson(SettingsJson settings, QuantityJson dose, BigDecimal chance) {
    static TestJson of(Proposal.Test test, QuantityKind kind) {
      return new TestJson(
          SettingsJson.of(test.settings(), null),
          QuantityJson.of(kind, test.dose()),
          QuantityJson.number(test.chance()));
    }
  }

  @GET
  @Fails(ProblemKind.INVALID_FIELDS)
  @Operation(
      operationId = "proposeNextTests",
      summary = "What to burn next",
      description =
          "From which dose to which it is right on this machine by now, with 95 % intervals, and"
              + " the tests that are expected to narrow both ends most when they are burned"
              + " together. tests says how many, 2 to 20, usually 8.")
  public NextJson next(@PathParam("id") UUID id, @QueryParam("tests") Integer tests) {
    return NextJson.of(next.of(request.actor(), id, tests), catalog.cautions());
  }
}

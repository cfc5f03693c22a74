package club.emberwell.api.report;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.view.ReportViews;
import club.emberwell.member.Role;
import club.emberwell.report.copy.ReportChanges;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Keeping a copy of the public reports up to date. */
@Path(ReportViews.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Reports")
public class ReportChangeResource {
  private static final String UPDATED_AFTER = "updatedAfter";

  private final ReportChanges changes;
  private final ReportViews views;

  ReportChangeResource(ReportChanges changes, ReportViews views) {
    this.changes = changes;
    this.views = views;
  }

  @GET
  @Path("changes")
  @RolesAllowed(Role.READ)
  @Fails({ProblemKind.INVALID_PARAMETER, ProblemKind.COPY_OUTDATED})
  @Operation(
      operationId = "listReportChanges",
      summary = "What changed among the public reports, oldest first",
      description =
          "For whoever keeps a copy. Without cursor and updatedAfter all reports come, so a copy can"
              + " be begun here too. Each report comes once with its newest change; one that was"
              + " withdrawn, held back or erased comes with gone. Unlike in other lists there always"
              + " is a next: keep it, and ask with it when you come back; no items means that"
              + " nothing has changed. The answer 410 means: take the whole again.")
  public ListJson<ReportChangeJson> changes(
      @QueryParam(UPDATED_AFTER)
          @Parameter(
              description =
                  "Only what changed since then; some of the ten minutes before may come too.",
              schema = @Schema(implementation = Instant.class))
          String updatedAfter,
      @BeanParam ListQuery list) {
    return ListJson.of(
        changes.since(list.part(), time(updatedAfter)),
        change -> ReportChangeJson.of(change, views));
  }

  private static Instant time(String given) {
    try {
      return given == null || given.isBlank() ? null : Instant.parse(given.strip());
    } catch (DateTimeParseException e) {
      throw Problems.at(
              ProblemKind.INVALID_PARAMETER,
              "/" + UPDATED_AFTER,
              "This is a time in UTC, such as 2026-11-26T11:39:00Z.")
          .exception();
    }
  }
}

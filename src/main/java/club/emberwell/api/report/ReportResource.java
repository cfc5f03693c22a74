package club.emberwell.api.report;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ReportJson;
import club.emberwell.api.view.ReportViews;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.report.Posting;
import club.emberwell.report.ReportService;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.report.StoredReport;
import club.emberwell.report.TriedByOthers;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Comparator;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Reports, one at a time. */
@Path(ReportViews.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Reports")
public class ReportResource {
  private final ReportService reports;
  private final ReportSource source;
  private final ReportViews views;
  private final ApiRequest request;

  ReportResource(
      ReportService reports, ReportSource source, ReportViews views, ApiRequest request) {
    this.reports = reports;
    this.source = source;
    this.views = views;
    this.request = request;
  }

  @Keyed
  @WithEtag
  @POST
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "createReport",
      summary = "Post a report",
      description =
          "Implausible values are stored and answered as warnings. A prohibited material is refused"
              + " with its hazard, agent and source. Needs an Idempotency-Key.")
  @APIResponseSchema(value = ReportJson.class, responseCode = "201")
  public Response post(ReportRequest sent) {
    return request.once(
        sent,
        () -> created(reports.post(request.actor(), Posting.ofApi(sent.id(), sent.written()))));
  }

  @WithEtag
  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "getReport", summary = "Read a report")
  @APIResponseSchema(value = ReportJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), reports.get(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "updateReport",
      summary = "Write a report anew",
      description = "Its author may, and moderators. Needs If-Match.")
  @APIResponseSchema(value = ReportJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, ReportRequest sent) {
    int version = request.version();
    Posting posting = Posting.ofApi(null, sent.written());
    return answer(
        Response.ok(), reports.revise(request.actor(), id, version, posting, sent.reason()));
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "withdrawReport",
      summary = "Withdraw a report",
      description = "Its author may. It stays in the history and counts no more. Heeds If-Match.")
  public void withdraw(@PathParam("id") UUID id) {
    reports.withdraw(request.actor(), id, request.versionIfGiven());
  }

  @Keyed
  @WithEtag
  @POST
  @Path("{id}/repeats")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "createRepeat",
      summary = "Post one's own trial of a report",
      description = "What is left out is taken from the report. Needs an Idempotency-Key.")
  @APIResponseSchema(value = ReportJson.class, responseCode = "201")
  public Response repeat(@PathParam("id") UUID id, ReportRequest sent) {
    return request.once(
        sent,
        () ->
            created(reports.repeat(request.actor(), id, Posting.ofApi(sent.id(), sent.written()))));
  }

  @GET
  @Path("{id}/repeats")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "listRepeats", summary = "The repeats of a report, oldest first")
  public ListJson<ReportJson> repeats(@PathParam("id") UUID id) {
    return ListJson.of(
        source.shown(reports.repeats(request.actor(), id)).stream()
            .sorted(Comparator.comparing(ReportSnapshot::createdAt))
            .map(views::hit)
            .toList());
  }

  @GET
  @Path("{id}/history")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "getReportHistory", summary = "Every version of a report")
  public ListJson<RevisionJson> history(@PathParam("id") UUID id) {
    return ListJson.of(RevisionJson.all(reports.history(request.actor(), id)));
  }

  private Response created(StoredReport report) {
    return answer(Response.created(URI.create(ReportViews.path(report.snapshot().id()))), report);
  }

  private Response answer(Response.ResponseBuilder response, StoredReport report) {
    TriedByOthers tried = reports.triedByOthers(report.snapshot().id());
    return ApiRequest.answer(response, report.snapshot().version(), views.whole(report, tried));
  }
}

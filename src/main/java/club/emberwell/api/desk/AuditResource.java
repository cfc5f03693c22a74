package club.emberwell.api.desk;

import club.emberwell.access.Downloads;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.desk.DeskTimes;
import club.emberwell.desk.log.AuditFilter;
import club.emberwell.desk.log.AuditLine;
import club.emberwell.desk.log.AuditTrail;
import club.emberwell.listing.Slice;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestQuery;

/** Who did what, when and why. */
@Path("/api/v1/desk/audit")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class AuditResource {
  private final AuditTrail trail;
  private final ApiRequest request;

  AuditResource(AuditTrail trail, ApiRequest request) {
    this.trail = trail;
    this.request = request;
  }

  /** What narrows the log. */
  static class Query {
    @QueryParam("who")
    String who;

    @QueryParam("action")
    String action;

    @QueryParam("entity")
    String entity;

    @QueryParam("entityId")
    String entityId;

    @QueryParam("from")
    String from;

    @QueryParam("to")
    String to;

    AuditFilter filter() {
      return new AuditFilter(
          who, action, entity, entityId, DeskTimes.read("/from", from), DeskTimes.read("/to", to));
    }
  }

  /**
   * Newest first.
   *
   * @param next cursor of the next page, null at the end
   */
  record Lines(List<AuditLine> lines, String next) {}

  @GET
  @Operation(summary = "The log by page, newest first")
  public Lines page(@BeanParam Query query, @BeanParam ListQuery list) {
    Slice<AuditLine> found = trail.page(request.actor(), query.filter(), list.part());
    return new Lines(found.rows(), found.next());
  }

  @GET
  @Path("export")
  @Produces({"text/csv", "application/jsonl"})
  @Operation(
      summary = "The whole log as a file",
      description = "format=csv (RFC 4180; cells that look like formulas begin with ') or jsonl.")
  public Response export(@BeanParam Query query, @RestQuery String format) {
    return Downloads.log(trail, request.actor(), query.filter(), format);
  }
}

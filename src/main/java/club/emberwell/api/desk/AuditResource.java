package club.emberwell.api.desk;

import club.emberwell.access.Downloads;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.view.MemberJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.bench.StoredJson;
import club.emberwell.desk.DeskTimes;
import club.emberwell.desk.log.AuditFilter;
import club.emberwell.desk.log.AuditLine;
import club.emberwell.desk.log.AuditTrail;
import club.emberwell.member.Role;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.type.TypeReference;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

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
    @QueryParam("by")
    String by;

    @QueryParam("action")
    String action;

    @QueryParam("kind")
    String kind;

    @QueryParam("id")
    String id;

    @QueryParam("from")
    String from;

    @QueryParam("to")
    String to;

    AuditFilter filter() {
      return new AuditFilter(
          by, action, kind, id, DeskTimes.read("/from", from), DeskTimes.read("/to", to));
    }
  }

  /**
   * One line of the log.
   *
   * @param by left out where a rule or the operator did it
   * @param rule left out where no rule did
   */
  @Schema(name = "LogLine")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record LineJson(
      long seq,
      Instant at,
      @Nullable MemberJson by,
      @Nullable String rule,
      String action,
      SubjectJson subject,
      String reason,
      Map<String, Object> detail) {
    static LineJson of(AuditLine line) {
      UUID member = line.doer().member();
      return new LineJson(
          line.seq(),
          line.at(),
          member == null ? null : MemberJson.of(member, line.who()),
          line.doer().rule(),
          line.action(),
          new SubjectJson(line.entity(), line.entityId()),
          line.reason(),
          StoredJson.read(line.detail(), new TypeReference<>() {}));
    }
  }

  /** What was done something about: an entry, a member, a term, the club. */
  @Schema(name = "LogSubject")
  record SubjectJson(String kind, String id) {}

  @Fails(ProblemKind.INVALID_FIELDS)
  @GET
  @Operation(operationId = "listLog", summary = "The log, newest first")
  public ListJson<LineJson> page(@BeanParam Query query, @BeanParam ListQuery list) {
    return ListJson.of(trail.page(request.actor(), query.filter(), list.part()), LineJson::of);
  }

  @Fails(ProblemKind.INVALID_FIELDS)
  @GET
  @Path("export")
  @Produces({"text/csv", "application/jsonl"})
  @Operation(
      operationId = "exportLog",
      summary = "The whole log as a file",
      description = "format=csv (RFC 4180; cells that look like formulas begin with ') or jsonl.")
  public Response export(@BeanParam Query query, @RestQuery String format) {
    return Downloads.log(trail, request.actor(), query.filter(), format);
  }
}

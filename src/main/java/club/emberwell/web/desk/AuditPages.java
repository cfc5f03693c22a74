package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.Downloads;
import club.emberwell.desk.AuditFilter;
import club.emberwell.desk.AuditLine;
import club.emberwell.desk.AuditTrail;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.DeskTimes;
import club.emberwell.listing.Slice;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
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
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestQuery;

/** The log: filtered, by page, and as a file. */
@Path("/desk/log")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class AuditPages {
  private static final List<String> FILTERS =
      List.of("who", "action", "entity", "entityId", "from", "to");
  private static final List<String> LABELS =
      List.of("Who", "What was done", "To what", "Its id", "From", "Until");

  private final AuditTrail trail;
  private final CurrentActor current;
  private final PageFrame page;

  AuditPages(AuditTrail trail, CurrentActor current, PageFrame page) {
    this.trail = trail;
    this.current = current;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance log(Log log);
  }

  /**
   * One page of the log.
   *
   * @param query the filter as a query string
   * @param next address of the next page, or null
   */
  record Log(List<Field> fields, Form form, List<AuditLine> lines, String query, String next) {}

  @GET
  public Response log(@Context UriInfo uri, @RestQuery Long before) {
    MultivaluedMap<String, String> sent = uri.getQueryParameters();
    Form form = new Form();
    List<Field> fields =
        Stream.iterate(0, i -> i + 1).limit(FILTERS.size()).map(i -> field(i, sent)).toList();
    fields.forEach(form::add);
    String query = query(sent);
    try {
      Slice<AuditLine> found = trail.page(current.get(), filter(sent), before);
      List<AuditLine> lines = found.rows();
      String next =
          found.more()
              ? "/desk/log?" + query + "&before=" + lines.get(lines.size() - 1).seq()
              : null;
      return Response.ok(Templates.log(new Log(fields, form, lines, query, next))).build();
    } catch (EntryRefused e) {
      page.fail();
      form.remarks(e.remarks());
      return Response.status(422)
          .entity(Templates.log(new Log(fields, form, List.of(), query, null)))
          .build();
    }
  }

  @GET
  @Path("file")
  @Produces({"text/csv", "application/jsonl"})
  public Response file(@Context UriInfo uri, @RestQuery String format) {
    return Downloads.log(trail, current.get(), filter(uri.getQueryParameters()), format);
  }

  private static Field field(int i, MultivaluedMap<String, String> sent) {
    return Field.of(FILTERS.get(i), LABELS.get(i))
        .maxLength(DeskLimits.FILTER)
        .value(sent.getFirst(FILTERS.get(i)));
  }

  private static AuditFilter filter(MultivaluedMap<String, String> sent) {
    return new AuditFilter(
        sent.getFirst("who"),
        sent.getFirst("action"),
        sent.getFirst("entity"),
        sent.getFirst("entityId"),
        DeskTimes.read("/from", sent.getFirst("from")),
        DeskTimes.read("/to", sent.getFirst("to")));
  }

  private static String query(MultivaluedMap<String, String> sent) {
    return FILTERS.stream()
        .filter(name -> sent.getFirst(name) != null && !sent.getFirst(name).isBlank())
        .map(name -> name + "=" + URLEncoder.encode(sent.getFirst(name), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&"));
  }
}

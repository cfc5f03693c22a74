package club.emberwell.web.desk;

import club.emberwell.access.Downloads;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.DeskTimes;
import club.emberwell.desk.log.AuditFilter;
import club.emberwell.desk.log.AuditLine;
import club.emberwell.desk.log.AuditTrail;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
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
import org.jboss.resteasy.reactive.RestQuery;

/** The log: filtered, by page, and as a file. */
@Path("/desk/log")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class AuditPages extends Pages {
  private static final List<String> FILTERS = List.of("by", "action", "kind", "id", "from", "to");
  private static final List<String> LABELS =
      List.of("Who", "Action", "Kind of entry", "Its id", "From", "Until");

  private final AuditTrail trail;

  AuditPages(AuditTrail trail) {
    this.trail = trail;
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
  record Log(Form form, List<AuditLine> lines, String query, String next) {}

  @GET
  public Response log(@Context UriInfo uri, @RestQuery String cursor) {
    MultivaluedMap<String, String> sent = uri.getQueryParameters();
    String query = query(sent);
    return take(
            new SentForm(sent),
            AuditPages::form,
            form -> Templates.log(new Log(form, List.of(), query, null)))
        .store(s -> trail.page(actor(), filter(sent), Part.after(cursor, null)))
        .show((form, found) -> Templates.log(log(form, found, query)));
  }

  private static Log log(Form form, Slice<AuditLine> found, String query) {
    String next = found.more() ? "/desk/log?" + query + "&cursor=" + found.next() : null;
    return new Log(form, found.rows(), query, next);
  }

  @GET
  @Path("file")
  @Produces({"text/csv", "application/jsonl"})
  public Response file(@Context UriInfo uri, @RestQuery String format) {
    return Downloads.log(trail, actor(), filter(uri.getQueryParameters()), format);
  }

  private static Form form() {
    Form form = new Form();
    for (int i = 0; i < FILTERS.size(); i++) {
      form.add(Field.of(FILTERS.get(i), LABELS.get(i)).maxLength(DeskLimits.FILTER));
    }
    return form;
  }

  private static AuditFilter filter(MultivaluedMap<String, String> sent) {
    return new AuditFilter(
        sent.getFirst("by"),
        sent.getFirst("action"),
        sent.getFirst("kind"),
        sent.getFirst("id"),
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

package club.emberwell.web.report;

import club.emberwell.entry.EntryState;
import club.emberwell.entry.Gone;
import club.emberwell.entry.Revision;
import club.emberwell.entry.Revision.Step;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WrittenDifference;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.web.frame.Opened;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.report.ReportViewer.Repeats;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The page of a report, its history and taking it back. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class ReportPages extends Pages {
  /** Of the address that one comes to from an edit; from a new report it says nothing. */
  static final String EDITED = "edited";

  private final ReportService reports;
  private final ReportViewer viewer;
  private final Opened opened;

  ReportPages(ReportService reports, ReportViewer viewer, Opened opened) {
    this.reports = reports;
    this.viewer = viewer;
    this.opened = opened;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance report(ReportPage report, boolean stored);

    static native TemplateInstance gone(String what);

    static native TemplateInstance history(String id, String work, List<Step<WrittenReport>> steps);

    static native TemplateInstance withdraw(String id, int version, String work);
  }

  @GET
  @Path("reports/{id}")
  @RolesAllowed(Role.READ)
  public Response show(@RestPath UUID id, @RestQuery String saved) {
    boolean edited = EDITED.equals(saved);
    say(edited ? saved : null, "Saved.");
    try {
      StoredReport stored = reports.get(actor(), id);
      ReportPage report = shown(stored);
      opened.saw(List.of(id));
      if (stored.snapshot().state() == EntryState.LIVE) {
        page.preview(viewer.preview(stored, actor()));
      }
      return Response.ok(Templates.report(report, saved != null && !edited)).build();
    } catch (Gone e) {
      return Response.status(Response.Status.GONE).entity(Templates.gone(e.getMessage())).build();
    }
  }

  private ReportPage shown(UUID id) {
    return shown(reports.get(actor(), id));
  }

  private ReportPage shown(StoredReport report) {
    Actor actor = actor();
    UUID id = report.snapshot().id();
    List<UUID> repeats = reports.repeats(actor, id);
    return viewer.page(
        report,
        repeats.isEmpty() ? Repeats.NONE : new Repeats(repeats, reports.triedByOthers(id)),
        actor);
  }

  @GET
  @Path("reports/{id}/history")
  @RolesAllowed(Role.READ)
  public TemplateInstance history(@RestPath UUID id) {
    Actor actor = actor();
    ReportPage report = viewer.page(reports.get(actor, id), Repeats.NONE, actor);
    List<Step<WrittenReport>> steps =
        Revision.steps(reports.history(actor, id), WrittenDifference::between);
    return Templates.history(id.toString(), report.work().what(), steps);
  }

  @GET
  @Path("reports/{id}/withdraw")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance withdraw(@RestPath UUID id) {
    ReportPage report = shown(id);
    return Templates.withdraw(report.head().id(), report.head().version(), report.work().what());
  }

  @POST
  @Path("reports/{id}/withdraw")
  @RolesAllowed(Role.WRITE)
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    reports.withdraw(actor(), id, version);
    return to("/reports/" + id);
  }
}

package club.emberwell.web.report;

import club.emberwell.entry.EntryState;
import club.emberwell.entry.Gone;
import club.emberwell.entry.Revision;
import club.emberwell.entry.Revision.Step;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.photo.PhotoSize;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.PictureRefused;
import club.emberwell.report.reading.WrittenDifference;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Opened;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
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
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** The page of a report, its history, its pictures and taking it back. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class ReportPages extends Pages {
  /** Of the address that one comes to from an edit; from a new report it says nothing. */
  static final String EDITED = "edited";

  private final ReportService reports;
  private final Photos photos;
  private final ReportViewer viewer;
  private final Opened opened;

  ReportPages(ReportService reports, Photos photos, ReportViewer viewer, Opened opened) {
    this.reports = reports;
    this.photos = photos;
    this.viewer = viewer;
    this.opened = opened;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance report(ReportPage report, Form photo, boolean stored);

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
      return Response.ok(Templates.report(report, photoForm(), saved != null && !edited)).build();
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

  @POST
  @Path("reports/{id}/photos")
  @RolesAllowed(Role.WRITE)
  public Response addPhoto(
      @RestPath UUID id, @RestForm("photo") FileUpload upload, @RestForm("id") String photo) {
    return press(ReportPages::photoForm, form -> Templates.report(shown(id), form, false))
        .run(s -> photos.add(actor(), id, Photos.Added.of(SentForm.readId(photo), picture(upload))))
        .then("/reports/" + id + "#photos");
  }

  /** With the id the picture will have, so that sending twice adds it once. */
  private static Form photoForm() {
    return new Form().add(Field.newId());
  }

  private static Photos.Ready picture(FileUpload upload) {
    if (upload == null || upload.size() == 0) {
      throw new EntryRefused(RemarkId.REQUIRED, "/photo", "Choose a picture first.");
    }
    try {
      return Photos.ready(Files.readAllBytes(upload.uploadedFile()));
    } catch (PictureRefused e) {
      throw new EntryRefused(RemarkId.PICTURE_UNUSABLE, "/photo", e.getMessage());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @POST
  @Path("reports/{id}/photos/{photo}/remove")
  @RolesAllowed(Role.WRITE)
  public Response removePhoto(@RestPath UUID id, @RestPath UUID photo) {
    photos.remove(actor(), photo);
    return to("/reports/" + id + "#photos");
  }

  /** The pictures themselves, for pages; the API has its own address for programs. */
  @GET
  @Path("reports/{id}/photos/{photo}.jpg")
  @Produces("image/jpeg")
  @RolesAllowed(Role.READ)
  public Response photo(@RestPath UUID id, @RestPath UUID photo, @RestQuery String small) {
    PhotoSize size = small == null ? PhotoSize.LARGE : PhotoSize.THUMB;
    return Response.ok(photos.bytes(actor(), photo, size).jpeg())
        .header("Content-Security-Policy", "sandbox; default-src 'none'")
        .header("Cache-Control", "private, max-age=86400, immutable")
        .build();
  }
}

package club.emberwell.web.photo;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.PhotoWords;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.ShownPhotos;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Adding photos to what is posted already, and changing what is said of them. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class PhotoPages extends Pages {
  private final Photos photos;
  private final ShownPhotos shown;
  private final ChosenPhotos chosen;

  PhotoPages(Photos photos, ShownPhotos shown, ChosenPhotos chosen) {
    this.photos = photos;
    this.shown = shown;
    this.chosen = chosen;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance photos(Album album, Form form);

    static native TemplateInstance photo(Edited edited, Form form);

    static native TemplateInstance kept(ChosenPhotos.Fields fields);
  }

  /**
   * The photos of an entry.
   *
   * @param mine whether the reader may add some
   * @param space how much of the reader's own is used, in words
   */
  record Album(Entry of, String action, List<Photo> photos, boolean mine, String space) {
    public boolean isFull() {
      return photos.size() >= ReportLimits.PHOTOS;
    }

    public int getMost() {
      return ReportLimits.PHOTOS;
    }
  }

  /** One photo whose words are changed. */
  record Edited(Photo photo, String back) {}

  /** Leads to where a photo stands. */
  @GET
  @Path("photos/{id}")
  @RolesAllowed(Role.READ)
  public Response find(@RestPath UUID id) {
    return to(place(shown.get(actor(), id)));
  }

  private String place(Photo photo) {
    String path = shown.pictured(actor(), photo.of().id()).path();
    return photo.of().kind() == EntryKind.REPORT ? path + "#photos" : path;
  }

  /** A fragment: the photos that are parked with a form. */
  @GET
  @Path("photos/parked")
  public TemplateInstance parked(@RestQuery UUID parking) {
    if (parking == null) {
      throw new EntryUnknown("page");
    }
    return Templates.kept(chosen.of(chosen.at(parking)));
  }

  @GET
  @Path("reports/{id}/photos")
  public TemplateInstance ofReport(@RestPath UUID id, @RestQuery String done) {
    return album(id, done);
  }

  TemplateInstance album(UUID id, String done) {
    say(done, "Saved.");
    return shown(id, blank(null));
  }

  /** With the id under which the form is sent once. */
  private Form blank(SentForm sent) {
    return chosen.into(new Form().add(Field.newId()), sent);
  }

  private TemplateInstance shown(UUID id, Form form) {
    Entry of = changeable(id);
    return Templates.photos(
        new Album(
            of,
            action(of),
            shown.of(actor(), of.kind(), id),
            actor().is(of.author().id()),
            chosen.getSpace()),
        form);
  }

  private Entry changeable(UUID id) {
    Entry of = shown.pictured(actor(), id);
    if (!actor().is(of.author().id()) && !actor().moderates()) {
      throw new EntryUnknown("page");
    }
    return of;
  }

  private static String action(Entry of) {
    return (of.kind() == EntryKind.REPORT ? "/reports/" : "/talk/") + of.id() + "/photos";
  }

  @POST
  @Path("reports/{id}/photos")
  public Uni<Response> addToReport(@RestPath UUID id, SentForm sent) {
    return add(id, sent);
  }

  Uni<Response> add(UUID id, SentForm sent) {
    shown.own(actor(), id);
    return chosen.take(sent).map(wrong -> added(id, sent, wrong));
  }

  private Response added(UUID id, SentForm sent, List<Remark> wrong) {
    return take(sent, () -> blank(sent), form -> shown(id, form))
        .run(
            s -> {
              Remarks.refuse(wrong);
              if (!chosen.any(s)) {
                throw new EntryRefused(RemarkId.REQUIRED, "/photo1", "Choose a photo first.");
              }
              chosen.addTo(s, id, Instant.now());
            })
        .then(done -> action(shown.pictured(actor(), id)) + "?done=added");
  }

  @GET
  @Path("photos/{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return edited(id, words(id));
  }

  private Form words(UUID id) {
    Photo photo = shown.get(actor(), id);
    return new Form()
        .changing("photo", photo.version(), place(photo))
        .add(ChosenPhotos.caption("caption").value(photo.words().caption()))
        .add(ChosenPhotos.alt("alt").value(photo.words().alt()));
  }

  private TemplateInstance edited(UUID id, Form form) {
    Photo photo = shown.get(actor(), id);
    return Templates.photo(new Edited(photo, action(changeable(photo.of().id()))), form);
  }

  @POST
  @Path("photos/{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
    return take(sent, () -> words(id), form -> edited(id, form))
        .store(
            s ->
                photos.say(
                    actor(), id, s.version(), new PhotoWords(s.text("caption"), s.text("alt"))))
        .then(this::album);
  }

  private String album(Photo photo) {
    return action(shown.pictured(actor(), photo.of().id())) + "?done=saved";
  }

  @POST
  @Path("photos/{id}/first")
  public Response first(@RestPath UUID id) {
    return to(album(photos.move(actor(), id, 1)));
  }

  @POST
  @Path("photos/{id}/remove")
  public Response remove(@RestPath UUID id) {
    Photo photo = shown.get(actor(), id);
    photos.remove(actor(), id);
    return to(album(photo));
  }
}

package club.emberwell.web.photo;

import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.report.photo.KeptPhotos.Kept;
import club.emberwell.report.photo.Photos;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
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
import java.util.UUID;
import java.util.function.Supplier;
import org.apache.commons.codec.digest.DigestUtils;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** The one photo of a kind of entries that only their authors see. */
public abstract class KeptPhotoPages extends Pages {

  private final EntryKind kind;
  private final KeptPhotos photos;
  private final OnePhoto one;

  KeptPhotoPages(EntryKind kind, KeptPhotos photos, OnePhoto one) {
    this.kind = kind;
    this.photos = photos;
    this.one = one;
  }

  @CheckedTemplate(basePath = "KeptPhotoPages")
  static class Templates {
    private Templates() {}

    static native TemplateInstance photo(Kept photo, Of of, Form form);
  }

  /** What the photo belongs to. */
  record Of(String title, String path) {}

  /** The title of one, for whoever may see it. */
  abstract String title(UUID id);

  @GET
  @Path("{id}/photo")
  @RolesAllowed(Role.WRITE)
  @Produces(MediaType.TEXT_HTML)
  @Blocking
  public TemplateInstance show(@RestPath UUID id) {
    return shown(id, form());
  }

  private static Form form() {
    return new Form().add(Field.of("photo", "Take or choose a photo"));
  }

  private TemplateInstance shown(UUID id, Form form) {
    Of of = new Of(title(id), kind.path(id, null));
    return Templates.photo(photos.of(id).orElse(null), of, form);
  }

  @POST
  @Path("{id}/photo")
  @RolesAllowed(Role.WRITE)
  @Produces(MediaType.TEXT_HTML)
  @Blocking
  public Uni<Response> add(@RestPath UUID id, @RestForm("photo") FileUpload upload) {
    return one.taken(actor(), upload, picture -> kept(id, picture));
  }

  private Response kept(UUID id, Supplier<Photos.Ready> picture) {
    return press(KeptPhotoPages::form, form -> shown(id, form))
        .run(s -> photos.put(actor(), kind, id, picture.get()))
        .then(kind.path(id, null));
  }

  @POST
  @Path("{id}/photo/remove")
  @RolesAllowed(Role.WRITE)
  @Produces(MediaType.TEXT_HTML)
  @Blocking
  public Response remove(@RestPath UUID id) {
    photos.remove(actor(), kind, id);
    return to(kind.path(id, null));
  }

  /** Asked for each time: the picture may be taken away, and who signed out sees it no more. */
  @GET
  @Path("{id}/photo.jpg")
  @RolesAllowed(Role.WRITE)
  @Blocking
  @Produces("image/jpeg")
  public Response picture(@RestPath UUID id) {
    byte[] jpeg = photos.bytes(actor(), kind, id);
    return Response.ok(jpeg)
        .header("Content-Length", jpeg.length)
        .header("ETag", "\"" + DigestUtils.sha256Hex(jpeg) + "\"")
        .header("X-Content-Type-Options", "nosniff")
        .header("Content-Security-Policy", "sandbox; default-src 'none'")
        .header("Cache-Control", "private, no-cache")
        .build();
  }
}

package club.emberwell.web.grid;

import club.emberwell.grid.photo.Corners;
import club.emberwell.grid.photo.GridColours;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.grid.photo.Spot;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.result.GridResults;
import club.emberwell.grid.result.Results;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.PicturesBusy;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.photo.OnePhoto;
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
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.apache.commons.codec.digest.DigestUtils;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** The photo of a grid: taken, its corners marked, cut into cells beside their settings. */
@Path("/grids")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class GridPhotoPages extends Pages {
  private static final double PERCENT = 100;
  private static final List<String> CORNERS =
      List.of("topLeft", "topRight", "bottomRight", "bottomLeft");

  private final GridResults results;
  private final GridPhotos photos;
  private final OnePhoto one;

  GridPhotoPages(GridResults results, GridPhotos photos, OnePhoto one) {
    this.results = results;
    this.photos = photos;
    this.one = one;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance photo(PhotoView grid, Form form);
  }

  @GET
  @Path("{id}/photo")
  public TemplateInstance show(@RestPath UUID id) {
    return shown(id, form(id));
  }

  private TemplateInstance shown(UUID id, Form form) {
    Results found = results.of(actor(), id);
    return Templates.photo(
        PhotoView.of(found, photos.of(actor(), id), colours(id, found.plan()), actor().units()),
        form);
  }

  /** Left out for once where many pictures are worked at: the page is worth more. */
  private Optional<GridColours> colours(UUID id, GridPlan plan) {
    try {
      return photos.colours(actor(), id, plan);
    } catch (PicturesBusy e) {
      return Optional.empty();
    }
  }

  /** The corners as shares of the picture in percent. */
  private Form form(UUID id) {
    Form form = new Form();
    form.add(Field.newId());
    Corners corners = PhotoView.corners(photos.of(actor(), id));
    for (int i = 0; i < CORNERS.size(); i++) {
      String name = CORNERS.get(i);
      String said = name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
      String label = said.substring(0, 1).toUpperCase(Locale.ROOT) + said.substring(1);
      Spot spot = corners.all().get(i);
      form.add(share(name + ".x", label + ", from the left (%)", spot.x()));
      form.add(share(name + ".y", label + ", from the top (%)", spot.y()));
    }
    return form;
  }

  private static Field share(String name, String label, double share) {
    double percent = Math.round(share * PERCENT * PERCENT) / PERCENT;
    return Field.of(name, label).inputMode("decimal").value(Double.toString(percent));
  }

  @POST
  @Path("{id}/photo")
  public Uni<Response> add(@RestPath UUID id, @RestForm("photo") FileUpload upload) {
    return one.taken(actor(), upload, picture -> kept(id, picture));
  }

  private Response kept(UUID id, Supplier<Photos.Ready> picture) {
    return press(() -> form(id), form -> shown(id, form))
        .run(s -> photos.put(actor(), id, picture.get()))
        .then("/grids/" + id + "/photo");
  }

  @POST
  @Path("{id}/photo/corners")
  public Response mark(@RestPath UUID id, SentForm sent) {
    return take(sent, () -> form(id), form -> shown(id, form))
        .store(s -> photos.mark(actor(), id, corners(s)))
        .then("/grids/" + id + "/photo#seen");
  }

  private static Corners corners(SentForm sent) {
    List<Spot> spots =
        CORNERS.stream()
            .map(name -> new Spot(share(sent, name + ".x"), share(sent, name + ".y")))
            .toList();
    return new Corners(spots.get(0), spots.get(1), spots.get(2), spots.get(3));
  }

  /** A number as people type it, with a point or a comma. */
  private static double share(SentForm sent, String name) {
    String text = sent.text(name);
    if (text == null || !text.replace(',', '.').matches("\\d{1,3}(\\.\\d{1,6})?")) {
      String pointer = "/" + name.replace('.', '/');
      String detail = "Give a number of percent from 0 to 100.";
      throw new EntryRefused(RemarkId.NUMBER_UNREADABLE, pointer, detail);
    }
    return Double.parseDouble(text.replace(',', '.')) / PERCENT;
  }

  @POST
  @Path("{id}/photo/remove")
  public Response remove(@RestPath UUID id) {
    photos.remove(actor(), id);
    return to("/grids/" + id + "/photo");
  }

  @GET
  @Path("{id}/photo.jpg")
  @Produces("image/jpeg")
  public Response picture(@RestPath UUID id) {
    return picture(photos.bytes(actor(), id));
  }

  @GET
  @Path("{id}/photo/flat.jpg")
  @Produces("image/jpeg")
  public Response flat(@RestPath UUID id) {
    return picture(photos.flat(actor(), id));
  }

  /** Asked for each time: the picture may be taken away, and who signed out sees it no more. */
  private static Response picture(byte[] jpeg) {
    return Response.ok(jpeg)
        .header("Content-Length", jpeg.length)
        .header("ETag", "\"" + DigestUtils.sha256Hex(jpeg) + "\"")
        .header("Content-Security-Policy", "sandbox; default-src 'none'")
        .header("Cache-Control", "private, no-cache")
        .build();
  }
}

package club.emberwell.web.photo;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.Role;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.photo.ParkedPhotos;
import club.emberwell.report.photo.PhotoSize;
import club.emberwell.report.photo.ShownPhotos;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The pictures themselves, for pages; the API has its own addresses for programs. */
@Path("/")
@Produces("image/jpeg")
@Blocking
public class PhotoFiles {
  private final ShownPhotos photos;
  private final ParkedPhotos parked;
  private final CurrentActor current;

  PhotoFiles(ShownPhotos photos, ParkedPhotos parked, CurrentActor current) {
    this.photos = photos;
    this.parked = parked;
    this.current = current;
  }

  /**
   * @param size its code
   */
  @GET
  @Path("photos/{id}/{size}.jpg")
  @RolesAllowed(Role.READ)
  public Response photo(@RestPath UUID id, @RestPath String size) {
    return answer(
        id,
        Coded.of(PhotoSize.class, size).orElseThrow(() -> new EntryUnknown("size of a picture")));
  }

  /** As pictures of reports were found first. */
  @GET
  @Path("reports/{id}/photos/{photo}.jpg")
  @RolesAllowed(Role.READ)
  public Response ofReport(@RestPath UUID id, @RestPath UUID photo, @RestQuery String small) {
    return answer(photo, small == null ? PhotoSize.LARGE : PhotoSize.THUMB);
  }

  /**
   * The bytes under an address never change, but who may see them does: whoever keeps them asks
   * each time, and one that was withdrawn or held is gone with the next look.
   */
  private Response answer(UUID id, PhotoSize size) {
    return jpeg(photos.bytes(current.get(), id, size))
        .header(HttpHeaders.ETAG, "\"" + id + "." + size.code() + "\"")
        .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
        .build();
  }

  @GET
  @Path("photos/parked/{id}.jpg")
  @RolesAllowed(Role.WRITE)
  public Response parked(@RestPath UUID id) {
    return jpeg(parked.thumb(current.get(), id))
        .header(HttpHeaders.CACHE_CONTROL, "no-store")
        .build();
  }

  private static Response.ResponseBuilder jpeg(byte[] bytes) {
    return Response.ok(bytes)
        .header(HttpHeaders.CONTENT_LENGTH, bytes.length)
        .header("X-Content-Type-Options", "nosniff")
        .header("Content-Security-Policy", "sandbox; default-src 'none'");
  }
}

package club.emberwell.api.photo;

import club.emberwell.access.Awaited;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.PhotoJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.PhotoSize;
import club.emberwell.report.photo.PhotoWords;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.ReadyPhotos;
import club.emberwell.report.photo.ShownPhotos;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.apache.commons.codec.digest.DigestUtils;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** What the photos of all kinds of entries have in common over HTTP. */
@RequestScoped
class PhotoRequests {
  /** A description for adding. */
  static final String ADDED =
      "JPEG, PNG or WebP, at most 10 MB and 40 million pixels. It is encoded anew without metadata,"
          + " in up to three sizes. Needs an Idempotency-Key.";

  static final String PART = "The part is named photo.";

  static final String CHANGED =
      "Its author may, and moderators. The picture itself stays as it is. Needs If-Match with the"
          + " version of the photo.";

  static final String SIZES =
      "size=thumb answers the small one, size=middle the one between, where there is one.";

  private final Photos photos;
  private final ReadyPhotos ready;
  private final ShownPhotos shown;
  private final ApiRequest request;

  PhotoRequests(Photos photos, ReadyPhotos ready, ShownPhotos shown, ApiRequest request) {
    this.photos = photos;
    this.ready = ready;
    this.shown = shown;
    this.request = request;
  }

  Uni<Response> add(EntryKind kind, UUID id, PhotoWords words, SentPicture sent) {
    return sent.used(
        upload ->
            Awaited.of(ready.of(request.actor(), upload))
                .map(picture -> added(kind, id, words, upload, picture)));
  }

  private Response added(
      EntryKind kind, UUID id, PhotoWords words, Path upload, Photos.Ready picture) {
    return request.once(
        words.equals(PhotoWords.NONE) ? upload : List.of(sum(upload), words),
        () -> {
          // what is of another kind is not known here
          shown.of(request.actor(), kind, id);
          PhotoJson photo =
              PhotoJson.of(
                  photos.add(request.actor(), id, new Photos.Added(null, picture, words, null)));
          return Response.created(URI.create(photo.url())).entity(photo).build();
        });
  }

  private static String sum(Path upload) {
    try {
      return new DigestUtils(DigestUtils.getSha256Digest()).digestAsHex(upload);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Uni<Response> addPart(EntryKind kind, UUID id, PhotoWords words, FileUpload part) {
    if (part == null) {
      throw Problems.of(ProblemKind.INVALID_REQUEST, "Send the picture as the part named photo.")
          .exception();
    }
    return add(kind, id, words, SentPicture.of(part));
  }

  ListJson<PhotoJson> list(EntryKind kind, UUID id) {
    return ListJson.of(PhotoJson.all(shown.of(request.actor(), kind, id)));
  }

  Response get(EntryKind kind, UUID id, UUID photo, String size) {
    needed(kind, id, photo);
    PhotoSize wanted = Coded.of(PhotoSize.class, size).orElse(PhotoSize.LARGE);
    byte[] jpeg = shown.bytes(request.actor(), photo, wanted);
    return Response.ok(jpeg, "image/jpeg")
        .header(HttpHeaders.CONTENT_LENGTH, jpeg.length)
        .header(HttpHeaders.ETAG, "\"" + photo + "." + wanted.code() + "\"")
        .header("X-Content-Type-Options", "nosniff")
        .header("Content-Security-Policy", "default-src 'none'; sandbox")
        .header("Content-Disposition", "inline; filename=\"" + photo + ".jpg\"")
        // what may be seen today may be withdrawn tomorrow
        .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
        .build();
  }

  Response change(EntryKind kind, UUID id, UUID photo, PhotoChange sent) {
    needed(kind, id, photo);
    int version = request.version();
    Photo now = photos.say(request.actor(), photo, version, sent.words());
    if (sent.position() != null) {
      now = photos.move(request.actor(), photo, sent.position());
    }
    return ApiRequest.answer(Response.ok(), now.version(), PhotoJson.of(now));
  }

  void remove(EntryKind kind, UUID id, UUID photo) {
    needed(kind, id, photo);
    photos.remove(request.actor(), photo);
  }

  /** A photo is found at what it belongs to, and nowhere else. */
  private void needed(EntryKind kind, UUID id, UUID photo) {
    Photo found = shown.get(request.actor(), photo);
    if (found.of().kind() != kind || !found.of().id().equals(id)) {
      throw new EntryUnknown("picture");
    }
  }
}

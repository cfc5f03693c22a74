package club.emberwell.web.photo;

import club.emberwell.access.Awaited;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.PictureRefused;
import club.emberwell.report.photo.PicturesBusy;
import club.emberwell.report.photo.ReadyPhotos;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** The one picture of a form: made ready, or refused at its field. */
@ApplicationScoped
public class OnePhoto {
  private static final String FIELD = "/photo";

  private final ReadyPhotos ready;

  OnePhoto(ReadyPhotos ready) {
    this.ready = ready;
  }

  /**
   * Answers when the picture is ready.
   *
   * @param upload null or empty where none was chosen
   * @param answer to the picture; asking for it throws {@link EntryRefused} where there is none
   */
  public Uni<Response> taken(
      Actor actor, FileUpload upload, Function<Supplier<Photos.Ready>, Response> answer) {
    boolean chosen = upload != null && upload.size() > 0;
    return Awaited.of(ready.of(actor, chosen ? List.of(upload.uploadedFile()) : List.of()))
        .map(made -> made.values().stream().findFirst())
        .map(made -> answer.apply(() -> picture(made.orElse(null))))
        .onFailure(PicturesBusy.class)
        .recoverWithItem(busy -> answer.apply(() -> unready(busy)));
  }

  private static Photos.Ready picture(ReadyPhotos.Outcome made) {
    if (made == null) {
      throw new EntryRefused(RemarkId.REQUIRED, FIELD, "Choose a picture first.");
    }
    try {
      return made.kept();
    } catch (PictureRefused e) {
      throw new EntryRefused(RemarkId.PICTURE_UNUSABLE, FIELD, e.getMessage());
    }
  }

  private static Photos.Ready unready(Throwable busy) {
    throw new EntryRefused(RemarkId.PICTURES_BUSY, FIELD, busy.getMessage());
  }
}

package club.emberwell.exchange.bench;

import club.emberwell.exchange.bench.ReturningThings.Picture;
import club.emberwell.grid.photo.Corners;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.grid.photo.Spot;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.KeptPhotos;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.PictureRefused;
import club.emberwell.report.photo.PicturesBusy;
import club.emberwell.report.photo.ReadyPhotos;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletionException;

/** Brings the pictures of a copy back: cleaned as any upload, each stored by itself. */
@ApplicationScoped
class ReturningPhotos {
  private final ReadyPhotos ready;
  private final KeptPhotos kept;
  private final GridPhotos grids;
  private final CopyLimits limits;

  ReturningPhotos(ReadyPhotos ready, KeptPhotos kept, GridPhotos grids, CopyLimits limits) {
    this.ready = ready;
    this.kept = kept;
    this.grids = grids;
    this.limits = limits;
  }

  /** What would become of them, by what they look like. */
  CopyOutcome.Photos look(CopyFile copy, List<Picture> pictures) throws IOException {
    List<String> refused = new ArrayList<>();
    for (Picture picture : pictures) {
      if (!copy.hasPicture(picture.file(), ReportLimits.PHOTO_UPLOAD)) {
        refused.add(missing(picture));
      }
    }
    return new CopyOutcome.Photos(pictures.size() - refused.size(), 0, refused);
  }

  private static String missing(Picture picture) {
    return "The photo of %s is missing in the copy, or is no JPEG.".formatted(picture.name());
  }

  /** Brings them back for as long as there is time; outside of transactions. */
  CopyOutcome.Photos bring(Actor actor, CopyFile copy, List<Picture> pictures) throws IOException {
    Instant until = Instant.now().plus(limits.photos());
    List<String> refused = new ArrayList<>();
    int restored = 0;
    int at = 0;
    while (at < pictures.size() && Instant.now().isBefore(until)) {
      Picture picture = pictures.get(at);
      String fault =
          copy.hasPicture(picture.file(), ReportLimits.PHOTO_UPLOAD)
              ? one(actor, copy, picture)
              : missing(picture);
      if (fault == null) {
        restored++;
      } else {
        refused.add(fault);
      }
      at++;
    }
    return new CopyOutcome.Photos(restored, pictures.size() - at, refused);
  }

  /** Null, or why not. */
  private String one(Actor actor, CopyFile copy, Picture picture) throws IOException {
    Path file = Files.createTempFile("emberwell-photo-", ".jpg");
    try (InputStream in = copy.picture(picture.file(), ReportLimits.PHOTO_UPLOAD)) {
      Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
      put(actor, picture, ready.of(actor, file).join());
      return null;
    } catch (EntryRefused e) {
      return "The photo of %s was not restored. %s".formatted(picture.name(), e.getMessage());
    } catch (CompletionException e) {
      if (e.getCause() instanceof PictureRefused || e.getCause() instanceof PicturesBusy) {
        return "The photo of %s was not restored. %s"
            .formatted(picture.name(), e.getCause().getMessage());
      }
      throw e;
    } finally {
      Files.delete(file);
    }
  }

  private void put(Actor actor, Picture picture, Photos.Ready jpeg) {
    if (picture.kind() == BenchKind.GRID) {
      grids.put(actor, picture.id(), jpeg);
      if (picture.corners().size() == 8) {
        grids.mark(actor, picture.id(), corners(picture.corners()));
      }
    } else {
      kept.put(actor, picture.kind().entry().orElseThrow(), picture.id(), jpeg);
    }
  }

  private static Corners corners(List<Double> xy) {
    return new Corners(spot(xy, 0), spot(xy, 2), spot(xy, 4), spot(xy, 6));
  }

  private static Spot spot(List<Double> xy, int at) {
    return new Spot(xy.get(at), xy.get(at + 1));
  }
}

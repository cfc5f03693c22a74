package club.emberwell.api.photo;

import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.PictureRefused;
import io.smallrye.mutiny.Uni;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/**
 * A picture that was sent, as a file: what waits for its turn takes no memory.
 *
 * @param ours whether it is to be deleted afterwards
 */
public record SentPicture(Path file, boolean ours) {
  /** As a part of a form, whose files go with their request. */
  static SentPicture of(FileUpload part) {
    return new SentPicture(part.uploadedFile(), false);
  }

  /**
   * As the whole body.
   *
   * @throws PictureRefused where it has too many bytes
   */
  public static SentPicture of(InputStream body) {
    try {
      SentPicture sent = new SentPicture(Files.createTempFile("picture", null), true);
      if (sent.filled(body) > ReportLimits.PHOTO_UPLOAD) {
        sent.forget();
        throw PictureRefused.tooBig();
      }
      return sent;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private long filled(InputStream body) throws IOException {
    long length = 0;
    byte[] some = new byte[8192];
    try (var out = Files.newOutputStream(file)) {
      for (int read = body.read(some);
          read >= 0 && length <= ReportLimits.PHOTO_UPLOAD;
          read = body.read(some)) {
        out.write(some, 0, read);
        length += read;
      }
    } catch (IOException | RuntimeException e) {
      forget();
      throw e;
    }
    return length;
  }

  /** Does something with it, and forgets it whatever came of that. */
  public <T> Uni<T> used(Function<Path, Uni<T>> use) {
    try {
      return use.apply(file).onTermination().invoke(this::forget);
    } catch (RuntimeException e) {
      forget();
      throw e;
    }
  }

  private void forget() {
    if (ours) {
      try {
        Files.deleteIfExists(file);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}

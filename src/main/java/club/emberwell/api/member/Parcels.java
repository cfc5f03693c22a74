package club.emberwell.api.member;

import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Sends a packed file once and removes it, however the sending ends. */
public final class Parcels {
  private Parcels() {}

  /** The answer with the file as an attachment. */
  public static Response send(Path file) {
    StreamingOutput body =
        out -> {
          try {
            Files.copy(file, out);
          } finally {
            Files.deleteIfExists(file);
          }
        };
    try {
      return Response.ok(body, "application/zip")
          .header("Content-Disposition", "attachment; filename=\"my-data.zip\"")
          .header("Content-Length", Files.size(file))
          .header("Cache-Control", "no-store")
          .build();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

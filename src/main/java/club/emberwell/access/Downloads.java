package club.emberwell.access;

import club.emberwell.desk.log.AuditFilter;
import club.emberwell.desk.log.AuditTrail;
import club.emberwell.desk.log.AuditTrail.Format;
import club.emberwell.keep.KnownBackup.ArchiveFile;
import club.emberwell.member.Actor;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jboss.resteasy.reactive.PathPart;

/** Answers that are files to keep. */
public final class Downloads {
  private Downloads() {}

  /** A packed file, sent once and removed however the sending ends. */
  public static Response once(Path file) {
    return once(file, "my-data.zip");
  }

  /** The same under a name of its own. */
  public static Response once(Path file, String name) {
    StreamingOutput body =
        out -> {
          try {
            Files.copy(file, out);
          } finally {
            Files.deleteIfExists(file);
          }
        };
    try {
      return attachment(body, "application/zip", name)
          .header(HttpHeaders.CONTENT_LENGTH, Files.size(file))
          .header(HttpHeaders.CACHE_CONTROL, "no-store")
          .build();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A backup, sent by the system from the disk: its size costs no memory and holds no thread. */
  public static Response backup(ArchiveFile archive) {
    try {
      long size = Files.size(archive.path());
      return Response.ok(new PathPart(archive.path(), 0, size), "application/zip")
          .header(HttpHeaders.CONTENT_LENGTH, size)
          .header(HttpHeaders.CONTENT_DISPOSITION, named(archive.name()))
          .header(HttpHeaders.CACHE_CONTROL, "no-store")
          .build();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The log, written while it is read: its size costs no memory. */
  public static Response log(AuditTrail trail, Actor actor, AuditFilter filter, String format) {
    Format wanted = "jsonl".equals(format) ? Format.JSON_LINES : Format.CSV;
    AuditFilter checked = trail.exportable(actor, filter);
    StreamingOutput lines =
        out ->
            trail.export(
                checked,
                wanted,
                new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8)));
    return (wanted == Format.CSV
            ? attachment(lines, "text/csv;charset=UTF-8", "log.csv")
            : attachment(lines, "application/jsonl", "log.jsonl"))
        .build();
  }

  private static Response.ResponseBuilder attachment(
      StreamingOutput body, String type, String name) {
    return Response.ok(body, type).header(HttpHeaders.CONTENT_DISPOSITION, named(name));
  }

  private static String named(String file) {
    return "attachment; filename=\"" + file + "\"";
  }
}

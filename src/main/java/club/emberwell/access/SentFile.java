package club.emberwell.access;

import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.PathPart;

/**
 * A file that never changes under its entity tag: sent whole, in part or not at all, as RFC 9110
 * says (sections 13 and 14). The system sends it from the disk; no thread waits meanwhile.
 *
 * @param name under which it is kept
 * @param tag strong: of these very bytes
 */
public record SentFile(Path file, String type, String name, String tag) {
  private static final Pattern RANGE = Pattern.compile("bytes=(\\d{0,18})-(\\d{0,18})");
  private static final int PARTIAL = 206;
  private static final int NOT_SATISFIABLE = 416;

  /** Bytes from one to another, both inclusive. */
  private record Part(long from, long to) {}

  /** The answer to a request for it. */
  public Response answer(Request conditions, HttpHeaders headers) {
    EntityTag etag = new EntityTag(tag);
    Response.ResponseBuilder unmet = conditions.evaluatePreconditions(etag);
    if (unmet != null) {
      return unmet.tag(etag).build();
    }
    try {
      return sent(headers, etag, Files.size(file)).build();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Response.ResponseBuilder sent(HttpHeaders headers, EntityTag etag, long size) {
    Matcher wanted = RANGE.matcher(wantedRange(headers));
    if (!wanted.matches()) {
      // a part too, so that nobody else looks at the range
      return described(Response.ok(new PathPart(file, 0, size)), etag, size);
    }
    Optional<Part> part = part(wanted.group(1), wanted.group(2), size);
    if (part.isEmpty()) {
      return Response.status(NOT_SATISFIABLE)
          .header("Content-Range", "bytes */" + size)
          .header("Accept-Ranges", "bytes");
    }
    long from = part.get().from();
    long count = part.get().to() - from + 1;
    return described(Response.status(PARTIAL).entity(new PathPart(file, from, count)), etag, count)
        .header("Content-Range", "bytes %d-%d/%d".formatted(from, part.get().to(), size));
  }

  /** Empty where all is wanted: also where it is another file by now. */
  private String wantedRange(HttpHeaders headers) {
    String range = headers.getHeaderString("Range");
    String same = headers.getHeaderString("If-Range");
    return range == null || same != null && !same.equals("\"" + tag + "\"") ? "" : range;
  }

  private static Optional<Part> part(String first, String last, long size) {
    if (first.isEmpty()) {
      // the last so many bytes
      long count = last.isEmpty() ? 0 : Math.min(Long.parseLong(last), size);
      return count == 0 ? Optional.empty() : Optional.of(new Part(size - count, size - 1));
    }
    long from = Long.parseLong(first);
    long to = last.isEmpty() ? size - 1 : Math.min(Long.parseLong(last), size - 1);
    return from > to ? Optional.empty() : Optional.of(new Part(from, to));
  }

  private Response.ResponseBuilder described(
      Response.ResponseBuilder answer, EntityTag etag, long length) {
    return answer
        .type(type)
        .tag(etag)
        .header(HttpHeaders.CONTENT_LENGTH, length)
        .header("Accept-Ranges", "bytes")
        .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"");
  }
}

package club.emberwell.web.outside;

import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.Date;
import java.util.UUID;

/** Sends a document that many ask for again and again only where it is another one by now. */
final class Unchanged {
  private Unchanged() {}

  /** 304 where the reader has it, else the document. */
  static Response.ResponseBuilder or(byte[] document, Instant updated, Request request) {
    EntityTag tag = new EntityTag(UUID.nameUUIDFromBytes(document).toString());
    Date changed = Date.from(updated);
    Response.ResponseBuilder unchanged = request.evaluatePreconditions(changed, tag);
    return unchanged == null
        ? Response.ok(document).tag(tag).lastModified(changed)
        : unchanged.tag(tag);
  }
}

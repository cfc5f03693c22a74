package club.emberwell.web.outside;

import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.Date;
import java.util.UUID;

/** Sends a document that many ask for again and again only where it is another one by now. */
final class Unchanged {
  private Unchanged() {}

  /**
   * 304 where the reader has it by its date, else the document with its tag, which is looked at
   * where all tags are. What was taken back changes it without a later date, so the date counts
   * only for readers that kept no tag (RFC 9110, section 13.1.3).
   */
  static Response.ResponseBuilder or(
      byte[] document, Instant updated, Request request, HttpHeaders headers) {
    EntityTag tag = new EntityTag(UUID.nameUUIDFromBytes(document).toString());
    Date changed = Date.from(updated);
    Response.ResponseBuilder unchanged =
        headers.getRequestHeader(HttpHeaders.IF_NONE_MATCH).isEmpty()
            ? request.evaluatePreconditions(changed)
            : null;
    return (unchanged == null ? Response.ok(document) : unchanged).tag(tag).lastModified(changed);
  }
}

package club.emberwell.access;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response.Status;
import java.util.Set;
import org.apache.commons.codec.digest.DigestUtils;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Honours If-None-Match wherever an answer has a tag, and completes the tags of versions by a hash
 * of what is answered.
 */
class ConditionalAnswers {
  private static final Set<String> READING = Set.of(HttpMethod.GET, HttpMethod.HEAD);
  private static final String VERSION = "\"\\d+\"";
  private static final String END = "\"";

  /** Digits of the hash: enough for versions of one thing. */
  private static final int HASH = 16;

  private final ObjectMapper json;
  private final RoutingContext routing;

  ConditionalAnswers(ObjectMapper json, RoutingContext routing) {
    this.json = json;
    this.routing = routing;
  }

  @ServerResponseFilter
  void answer(ContainerRequestContext request, ContainerResponseContext response) {
    String tag = response.getHeaderString(HttpHeaders.ETAG);
    boolean read = READING.contains(request.getMethod());
    if (tag == null || !read || response.getStatus() != Status.OK.getStatusCode()) {
      return;
    }
    if (tag.matches(VERSION)) {
      String body = text(response.getEntity());
      response.setEntity(body, null, MediaType.APPLICATION_JSON_TYPE);
      tag = tag.substring(0, tag.length() - 1) + "-" + hash(body) + END;
    }
    boolean asItIs = response.getHeaders().containsKey(HttpHeaders.CONTENT_LENGTH);
    if (!tag.startsWith("W/") && !asItIs && packed()) {
      // the same answer in other bytes needs a strong tag of its own (RFC 9110, section 8.8.3.3)
      tag = tag.substring(0, tag.length() - 1) + "-gzip" + END;
    }
    response.getHeaders().putSingle(HttpHeaders.ETAG, tag);
    if (Etags.held(routing, tag)) {
      response.setStatus(Status.NOT_MODIFIED.getStatusCode());
      response.setEntity(null);
      response.getHeaders().remove(HttpHeaders.CONTENT_TYPE);
      response.getHeaders().remove(HttpHeaders.CONTENT_LENGTH);
    }
  }

  /** Whether the server will compress: it does so with all that has a tag, but for files. */
  private boolean packed() {
    String accepted = routing.request().getHeader(HttpHeaders.ACCEPT_ENCODING);
    return accepted != null && (accepted.contains("gzip") || accepted.contains("deflate"));
  }

  private String text(Object entity) {
    try {
      return json.writeValueAsString(entity);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Hexadecimal: a "-" at its end would be lost with the "-gzip" that follows. */
  private static String hash(String body) {
    return DigestUtils.sha256Hex(body).substring(0, HASH);
  }
}

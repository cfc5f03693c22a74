package club.emberwell.access.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.http.HttpVersion;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.concurrent.TimeUnit;

/**
 * Answers with a problem where neither a thread nor the database may be asked: what is refused
 * before it is routed, or cannot be.
 */
@ApplicationScoped
public class BareAnswers {
  /** As long as what was refused may go on coming. */
  private static final long REST = TimeUnit.SECONDS.toMillis(5);

  private final ObjectMapper json;

  BareAnswers(ObjectMapper json) {
    this.json = json;
  }

  /** The page of whoever is refused so early; the frame of all other pages asks the database. */
  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance bare(Problem problem, String requestId);
  }

  /** Answers and hangs up, for what is still being sent will not be read. */
  public void refuse(RoutingContext request, Problem problem) {
    // of HTTP/2 the connection has other requests too
    if (request.request().version() != HttpVersion.HTTP_2) {
      request.response().putHeader(HttpHeaders.CONNECTION, HttpHeaders.CLOSE);
      request.addEndHandler(answered -> discard(request));
    }
    answer(request, problem);
  }

  /** Lets the rest come and go for a while: who is cut off while sending never sees an answer. */
  private static void discard(RoutingContext request) {
    HttpServerRequest sent = request.request();
    if (sent.isEnded()) {
      sent.connection().close();
      return;
    }
    sent.exceptionHandler(gone -> {}).handler(rest -> {});
    sent.endHandler(end -> sent.connection().close());
    sent.resume();
    request.vertx().setTimer(REST, over -> sent.connection().close());
  }

  /** Answers in the form that suits who asked. */
  public void answer(RoutingContext request, Problem problem) {
    HttpServerResponse response = request.response();
    if (response.headWritten() || response.closed()) {
      return;
    }
    Errors.note(request, problem.kind());
    boolean page = !path(request).startsWith("/api/") && !path(request).startsWith("/q/");
    response.setStatusCode(problem.kind().status());
    response.putHeader(
        HttpHeaders.CONTENT_TYPE,
        page ? "text/html;charset=UTF-8" : Errors.PROBLEM_JSON.toString());
    problem.headers().forEach(response::putHeader);
    String text =
        page
            ? Templates.bare(problem, response.headers().get(Errors.REQUEST_ID)).render()
            : json(problem);
    if (request.request().method().equals(HttpMethod.HEAD)) {
      response.end();
    } else {
      response.end(text);
    }
  }

  private static String path(RoutingContext request) {
    String path = request.request().path();
    return path == null ? "/" : path;
  }

  private String json(Problem problem) {
    try {
      return json.writeValueAsString(problem);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}

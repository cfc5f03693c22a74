package club.emberwell.access.problem;

import io.quarkus.arc.All;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;

/** Answers with a problem, in JSON or in whatever form claims the path. */
@ApplicationScoped
public class Errors {
  /** The header of every answer by which its request is found in the log. */
  public static final String REQUEST_ID = "X-Request-Id";

  static final MediaType PROBLEM_JSON = new MediaType("application", "problem+json");
  private static final String KIND = "emberwell.problem";

  private final List<ErrorRenderer> renderers;
  private final RoutingContext request;

  Errors(@All List<ErrorRenderer> renderers, RoutingContext request) {
    this.renderers = renderers;
    this.request = request;
  }

  /** What kind of problem a request was answered with; null for none. */
  public static ProblemKind kind(RoutingContext request) {
    return request.get(KIND);
  }

  /** Says so of an answer that somebody else writes. */
  public static void note(RoutingContext request, ProblemKind kind) {
    request.put(KIND, kind);
  }

  /** The whole answer. */
  public Response answer(Problem problem) {
    note(request, problem.kind());
    Response.ResponseBuilder answer =
        renderers.stream()
            .filter(r -> r.claims(request.normalizedPath()))
            .findFirst()
            .map(r -> r.render(problem))
            .orElseGet(() -> Response.ok(problem, PROBLEM_JSON));
    answer.status(problem.kind().status());
    problem.headers().forEach(answer::header);
    return answer.build();
  }
}

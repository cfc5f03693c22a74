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
  static final MediaType PROBLEM_JSON = new MediaType("application", "problem+json");

  private final List<ErrorRenderer> renderers;
  private final RoutingContext request;

  Errors(@All List<ErrorRenderer> renderers, RoutingContext request) {
    this.renderers = renderers;
    this.request = request;
  }

  /** The whole answer. */
  public Response answer(Problem problem) {
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

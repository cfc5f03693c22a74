package club.emberwell.web.frame;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.problem.ErrorRenderer;
import club.emberwell.access.problem.Problem;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/** The same problems as the API's, for people: what happened and where to go from here. */
@ApplicationScoped
public class ErrorPages implements ErrorRenderer {
  private static final int UNAUTHORIZED = 401;

  private final RoutingContext request;

  ErrorPages(RoutingContext request) {
    this.request = request;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance problem(Problem problem, boolean signIn, String to);
  }

  @Override
  public boolean claims(String path) {
    return !path.startsWith("/q/") && !ApiPaths.isApi(path);
  }

  @Override
  public Response.ResponseBuilder render(Problem problem) {
    boolean safe = request.request().method().name().equals("GET");
    String to = safe ? request.request().uri() : "/";
    String html = Templates.problem(problem, problem.kind().status() == UNAUTHORIZED, to).render();
    return Response.ok(html, MediaType.TEXT_HTML + ";charset=UTF-8");
  }
}

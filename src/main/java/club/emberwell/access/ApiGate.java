package club.emberwell.access;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.IOException;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Turns requests back before anything is done for them: credentials nobody could look up, dead
 * tokens, bodies that say nothing.
 */
@Provider
class ApiGate implements ReaderInterceptor {
  private final RoutingContext request;

  ApiGate(RoutingContext request) {
    this.request = request;
  }

  @ServerRequestFilter(preMatching = true)
  void check() {
    Throwable failure = CredentialMechanism.failure(request);
    if (failure != null) {
      throw new IllegalStateException("the credential could not be looked up", failure);
    }
    if (ApiPaths.isApi(request) && CredentialMechanism.refused(request)) {
      throw Problems.unauthorized(true).exception();
    }
  }

  /** Refuses nothing at all, where an object is meant. */
  @Override
  public Object aroundReadFrom(ReaderInterceptorContext context) throws IOException {
    MediaType type = context.getMediaType();
    Object read = context.proceed();
    if (read == null
        && ApiPaths.isApi(request)
        && MediaType.APPLICATION_JSON_TYPE.isCompatible(type)) {
      throw Problems.at(ProblemKind.INVALID_JSON, "", "A JSON object is expected.").exception();
    }
    return read;
  }
}

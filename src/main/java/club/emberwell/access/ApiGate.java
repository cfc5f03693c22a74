package club.emberwell.access;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.inject.Instance;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Turns requests back before anything is done for them: credentials nobody could look up, dead
 * tokens, bodies that are too big.
 */
@Provider
class ApiGate implements ReaderInterceptor {
  /** Asked late: interceptors are made before the configuration can be read. */
  private final Instance<ApiLimits> limits;

  private final RoutingContext request;

  ApiGate(Instance<ApiLimits> limits, RoutingContext request) {
    this.limits = limits;
    this.request = request;
  }

  @ServerRequestFilter(preMatching = true)
  void check() {
    Throwable failure = CredentialMechanism.failure(request);
    if (failure != null) {
      throw new IllegalStateException("the credential could not be looked up", failure);
    }
    if (!ApiPaths.isApi(request)) {
      return;
    }
    if (CredentialMechanism.refused(request)) {
      throw Problems.unauthorized(true).exception();
    }
    String length = request.request().getHeader(HttpHeaders.CONTENT_LENGTH);
    String type = request.request().getHeader(HttpHeaders.CONTENT_TYPE);
    boolean json = type != null && type.startsWith(MediaType.APPLICATION_JSON);
    if (json && length != null && Long.parseLong(length) > jsonBody()) {
      throw Problems.tooLarge(jsonBody()).exception();
    }
  }

  private long jsonBody() {
    return limits.get().jsonBody();
  }

  /** Counts what arrives without a length, and refuses nothing at all. */
  @Override
  public Object aroundReadFrom(ReaderInterceptorContext context) throws IOException {
    MediaType type = context.getMediaType();
    if (!ApiPaths.isApi(request) || !MediaType.APPLICATION_JSON_TYPE.isCompatible(type)) {
      return context.proceed();
    }
    context.setInputStream(new Counted(context.getInputStream(), jsonBody()));
    Object read = context.proceed();
    if (read == null) {
      throw Problems.at(ProblemKind.INVALID_JSON, "", "A JSON object is expected.").exception();
    }
    return read;
  }

  private static final class Counted extends FilterInputStream {
    private final long limit;
    private long left;

    Counted(InputStream in, long limit) {
      super(in);
      this.limit = limit;
      this.left = limit;
    }

    @Override
    public int read() throws IOException {
      int read = super.read();
      return read < 0 ? read : spend(1, read);
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      int read = super.read(into, offset, length);
      return read < 0 ? read : spend(read, read);
    }

    private int spend(int bytes, int answer) {
      left -= bytes;
      if (left < 0) {
        throw Problems.tooLarge(limit).exception();
      }
      return answer;
    }
  }
}

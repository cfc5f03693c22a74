package club.emberwell.access;

import club.emberwell.access.problem.ProblemException;
import club.emberwell.access.problem.Problems;
import io.quarkus.vertx.http.runtime.VertxHttpRecorder;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.container.ContainerRequestContext;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Turns back bodies that are longer than their address takes ({@link LongestBody}): before anything
 * of them is read where they say their length, else as soon as more has come.
 */
@ApplicationScoped
class BodyGate {
  /** Behind the framework's own limit, before whatever reads bodies. */
  private static final int EARLY = 5;

  /** By which the framework stops reading in any case: a little later than we do. */
  private static final long SLACK = 1 << 16;

  /** Before who may write, and how fast. */
  private static final int FIRST = 100;

  /** As long as what was refused may go on coming, so that its sender gets to read the answer. */
  private static final long REST = TimeUnit.SECONDS.toMillis(5);

  private final LongestBody longest;

  private final RoutingContext request;

  BodyGate(LongestBody longest, RoutingContext request) {
    this.longest = longest;
    this.request = request;
  }

  void register(@Observes Filters filters) {
    filters.register(
        routing -> {
          routing.put(VertxHttpRecorder.MAX_REQUEST_SIZE_KEY, longest.of(routing) + SLACK);
          routing.next();
        },
        EARLY);
  }

  @ServerRequestFilter(priority = FIRST)
  void check(ContainerRequestContext context) {
    HttpServerRequest sent = request.request();
    String length = sent.getHeader(HttpHeaders.CONTENT_LENGTH);
    long limit = longest.of(request);
    if (length != null) {
      if (Long.parseLong(length) > limit) {
        throw refused(limit);
      }
    } else if (sent.getHeader(HttpHeaders.TRANSFER_ENCODING) != null || !sent.isEnded()) {
      InputStream body = context.getEntityStream();
      if (body != null) {
        context.setEntityStream(new Counted(body, limit, () -> refused(limit)));
      }
    }
  }

  private ProblemException refused(long limit) {
    discard();
    return Problems.tooLarge(limit).exception();
  }

  /** Lets the rest come and go for a while: who is cut off while sending never sees an answer. */
  private void discard() {
    HttpServerRequest sent = request.request();
    Vertx vertx = request.vertx();
    vertx.runOnContext(
        now -> {
          if (!sent.isEnded()) {
            sent.exceptionHandler(gone -> {}).handler(rest -> {}).endHandler(end -> {});
            sent.resume();
            vertx.setTimer(REST, over -> hangUp(sent));
          }
        });
  }

  private static void hangUp(HttpServerRequest sent) {
    if (!sent.isEnded()) {
      sent.connection().close();
    }
  }

  private static final class Counted extends FilterInputStream {
    private final Supplier<ProblemException> refused;
    private long left;

    Counted(InputStream in, long limit, Supplier<ProblemException> refused) {
      super(in);
      this.left = limit;
      this.refused = refused;
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
        throw refused.get();
      }
      return answer;
    }

    /** The framework closes what it has read; it need not read on to do so. */
    @Override
    public void close() throws IOException {
      if (left >= 0) {
        super.close();
      }
    }
  }
}

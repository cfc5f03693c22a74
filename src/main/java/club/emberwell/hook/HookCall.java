package club.emberwell.hook;

import club.emberwell.hook.HookAddresses.Target;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClient;
import io.vertx.core.http.HttpClientOptions;
import io.vertx.core.http.HttpClientRequest;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.net.SocketAddress;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import org.jboss.logging.Logger;

/**
 * Sends one delivery. It connects to the address that was looked at, while TLS and the request name
 * the host; follows no redirect; reads the head of the answer and hangs up.
 */
@ApplicationScoped
class HookCall {
  private static final Logger LOG = Logger.getLogger(HookCall.class);
  private static final int HEADER_BYTES = 8192;

  private final HttpClient client;
  private final Duration whole;

  @Inject
  HookCall(Vertx vertx, HookConfig config) {
    this(vertx, options(config.connectTimeout()), config.timeout());
  }

  HookCall(Vertx vertx, HttpClientOptions options, Duration whole) {
    this.client = vertx.createHttpClient(options);
    this.whole = whole;
  }

  static HttpClientOptions options(Duration connect) {
    return new HttpClientOptions()
        .setConnectTimeout((int) connect.toMillis())
        .setSslHandshakeTimeout(connect.toMillis())
        .setSslHandshakeTimeoutUnit(TimeUnit.MILLISECONDS)
        .setMaxHeaderSize(HEADER_BYTES)
        .setKeepAlive(false);
  }

  @PreDestroy
  void close() {
    client.close();
  }

  /**
   * Posts a body of JSON; waits, so not on a thread that answers requests.
   *
   * @return the status of the answer
   * @throws IOException where none came in time
   */
  int post(Target to, Map<String, String> headers, String body) throws IOException {
    AtomicReference<HttpClientRequest> begun = new AtomicReference<>();
    Future<Integer> status =
        client
            .request(options(to))
            .compose(
                request -> {
                  begun.set(request);
                  headers.forEach(request::putHeader);
                  return request.send(Buffer.buffer(body));
                })
            .map(
                answer -> {
                  // that the rest does not come is what we want
                  answer.exceptionHandler(e -> LOG.tracef(e, "hung up"));
                  answer.request().connection().close();
                  return answer.statusCode();
                });
    try {
      return status
          .toCompletionStage()
          .toCompletableFuture()
          .get(whole.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      hangUp(begun.get());
      throw new IOException("no answer within " + whole.toSeconds() + " s", e);
    } catch (ExecutionException e) {
      throw new IOException(reason(e.getCause()), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      hangUp(begun.get());
      throw new IOException("stopped", e);
    }
  }

  private RequestOptions options(Target to) throws IOException {
    // without its name, so that nothing looks it up again
    InetAddress at = InetAddress.getByAddress(to.at().getAddress());
    return new RequestOptions()
        .setMethod(HttpMethod.POST)
        .setServer(SocketAddress.inetSocketAddress(new InetSocketAddress(at, to.port())))
        .setHost(to.host())
        .setPort(to.port())
        .setSsl(to.tls())
        .setURI(to.path())
        .setIdleTimeout(whole.toMillis());
  }

  /** An answer that drips in must not hold its connection for longer. */
  private static void hangUp(HttpClientRequest begun) {
    if (begun != null) {
      begun.connection().close();
    }
  }

  private static String reason(Throwable e) {
    Throwable last = e;
    while (last.getCause() != null) {
      last = last.getCause();
    }
    return last.getMessage() == null ? last.getClass().getSimpleName() : last.getMessage();
  }
}

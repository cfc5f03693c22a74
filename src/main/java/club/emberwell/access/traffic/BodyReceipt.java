package club.emberwell.access.traffic;

import club.emberwell.access.problem.Problem;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import io.vertx.core.Future;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jboss.logging.Logger;

/** One body while it arrives. All of it happens on the event loop of its connection. */
final class BodyReceipt {
  private static final Logger LOG = Logger.getLogger(BodyReceipt.class);
  private static final String CONTINUE = "100-continue";
  private static final long MS_IN_SECOND = 1000;

  private final RoutingContext routing;
  private final HttpServerRequest request;
  private final TrafficLimits limits;
  private final long most;
  private final Runnable done;
  private final Consumer<Problem> refusal;
  private final long begun = System.nanoTime();
  private BodyStore store;
  private long received;
  private long timer;
  private boolean over;

  /**
   * @param most bytes that are taken
   * @param done called once, when it no longer arrives
   * @param refusal called where it is broken off and somebody is there to be told
   */
  BodyReceipt(
      RoutingContext routing,
      TrafficLimits limits,
      long most,
      Runnable done,
      Consumer<Problem> refusal) {
    this.routing = routing;
    this.request = routing.request();
    this.limits = limits;
    this.most = most;
    this.done = done;
    this.refusal = refusal;
  }

  /** Reads to the end and lets the request go on. */
  void begin(Future<BodyStore> opened) {
    request.pause();
    request.exceptionHandler(gone -> end());
    timer = routing.vertx().setTimer(limits.bodyTime().toMillis(), this::look);
    opened.onSuccess(this::fill).onFailure(this::fail);
  }

  private void fill(BodyStore into) {
    store = into;
    if (over) {
      store.drop();
      return;
    }
    if (store.stream() != null) {
      store.stream().exceptionHandler(this::fail);
    }
    request.handler(this::take);
    request.endHandler(ended -> finish());
    if (CONTINUE.equalsIgnoreCase(request.getHeader(HttpHeaders.EXPECT))) {
      routing.response().writeContinue();
    }
    request.resume();
  }

  private void take(Buffer piece) {
    if (over) {
      return;
    }
    received += piece.length();
    if (received > most) {
      refuse(Problems.tooLarge(most));
      return;
    }
    store.keep(piece);
    if (store.stream() != null && store.stream().writeQueueFull()) {
      request.pause();
      store.stream().drainHandler(drained -> request.resume());
    }
  }

  private void finish() {
    if (over) {
      return;
    }
    stop();
    store.whole().onSuccess(this::handOn).onFailure(routing::fail);
  }

  private void handOn(SentBody body) {
    routing.put(SentBodies.WHOLE, body);
    routing.addEndHandler(answered -> routing.vertx().executeBlocking(() -> close(body)));
    routing.next();
  }

  private static Void close(SentBody body) throws IOException {
    body.close();
    return null;
  }

  /** Whether it still comes fast enough. */
  private void look(long fired) {
    long allowed = limits.bodyTime().toMillis() + received * MS_IN_SECOND / limits.bodyRate();
    long left = allowed - TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
    if (left > 0) {
      timer = routing.vertx().setTimer(left, this::look);
    } else {
      refuse(Problems.of(ProblemKind.TOO_SLOW, "What you sent did not arrive in time."));
    }
  }

  private void refuse(Problem problem) {
    end();
    refusal.accept(problem);
  }

  private void fail(Throwable e) {
    if (!over) {
      LOG.warnf("a body could not be kept: %s", e.getMessage());
      refuse(Problems.storageFull());
    }
  }

  private void end() {
    if (!over) {
      stop();
      if (store != null) {
        store.drop();
      }
    }
  }

  private void stop() {
    over = true;
    routing.vertx().cancelTimer(timer);
    done.run();
  }
}

package club.emberwell.access.problem;

import io.vertx.core.http.HttpClosedException;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.http.StreamResetException;
import java.io.IOException;
import java.nio.channels.ClosedChannelException;

/** Tells whoever asked and did not wait for the answer from a fault of ours. */
public final class Departed {
  private Departed() {}

  /** Looks through all causes. */
  public static boolean is(Throwable e, HttpServerResponse response) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof HttpClosedException
          || cause instanceof ClosedChannelException
          || cause instanceof StreamResetException
          || cause instanceof IOException && response.closed()) {
        return true;
      }
    }
    return false;
  }
}

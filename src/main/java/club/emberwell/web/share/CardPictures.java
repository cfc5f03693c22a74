package club.emberwell.web.share;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jboss.logging.Logger;

/**
 * Has pictures drawn by one thread of its own, so that a stranger who asks for many waits for no
 * more than a few and takes no thread that answers; keeps the latest.
 */
@ApplicationScoped
class CardPictures {
  private static final Logger LOG = Logger.getLogger(CardPictures.class);
  private static final int KEPT = 64;
  private static final int QUEUE = 6;
  private static final int SECONDS = 3;

  private final ThreadPoolExecutor painter =
      new ThreadPoolExecutor(
          1, 1, 1, TimeUnit.MINUTES, new ArrayBlockingQueue<>(QUEUE), CardPictures::thread);

  private final Map<Card, byte[]> kept =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Card, byte[]> eldest) {
          return size() > KEPT;
        }
      };

  CardPictures() {
    painter.allowCoreThreadTimeOut(true);
  }

  private static Thread thread(Runnable task) {
    Thread thread = new Thread(task, "link-pictures");
    thread.setDaemon(true);
    return thread;
  }

  @PreDestroy
  void stop() {
    painter.shutdownNow();
  }

  /** The picture as PNG; empty where too many wait, or this machine has no letters to draw. */
  Optional<byte[]> of(Card card) {
    byte[] known = known(card);
    if (known != null) {
      return Optional.of(known);
    }
    Future<byte[]> drawn;
    try {
      drawn = painter.submit(() -> CardPainter.png(card));
    } catch (RejectedExecutionException e) {
      return Optional.empty();
    }
    try {
      byte[] png = drawn.get(SECONDS, TimeUnit.SECONDS);
      keep(card, png);
      return Optional.of(png);
    } catch (TimeoutException e) {
      drawn.cancel(true);
    } catch (InterruptedException e) {
      drawn.cancel(true);
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      // a server without fonts cannot write; the page does without its picture
      LOG.debug("a preview picture could not be drawn", e);
    }
    return Optional.empty();
  }

  private byte[] known(Card card) {
    synchronized (kept) {
      return kept.get(card);
    }
  }

  private void keep(Card card, byte[] png) {
    synchronized (kept) {
      kept.put(card, png);
    }
  }
}

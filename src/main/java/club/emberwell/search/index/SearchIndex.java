package club.emberwell.search.index;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.entry.change.GrowingPause;
import club.emberwell.report.ReportSource;
import club.emberwell.search.query.SearchLimits;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.apache.lucene.store.AlreadyClosedException;
import org.jboss.logging.Logger;

/**
 * This node's index: follows the change rows, answers reads, and replaces itself when it is
 * missing, damaged, behind the kept rows, of another history or written with other words. One
 * thread of its own writes; any thread may read.
 */
public final class SearchIndex {
  private static final Logger LOG = Logger.getLogger(SearchIndex.class);
  private static final UUID WAKE_UP = new UUID(0, 0);
  private static final long SECOND = 1_000_000_000L;

  /** Somebody who waits for a report. */
  private record Ticket(UUID report, CompletableFuture<Boolean> seen) {}

  private final IndexFollower follower;
  private final Supplier<Vocabulary> vocabulary;
  private final BlockingQueue<Ticket> waiting = new LinkedBlockingQueue<>();
  private volatile Thread thread;
  private volatile boolean stopping;

  /**
   * @param pause holds back indexes that are needed again and again
   */
  public SearchIndex(
      IndexFolder folder,
      ChangeLog log,
      ReportSource source,
      Supplier<Vocabulary> vocabulary,
      GrowingPause pause) {
    this.vocabulary = vocabulary;
    this.follower = new IndexFollower(folder, log, source, vocabulary, pause);
  }

  public void start() {
    thread = new Thread(this::run, "search-index");
    thread.setDaemon(true);
    thread.start();
  }

  public void stop() {
    stopping = true;
    Thread running = thread;
    if (running != null) {
      // a ticket wakes it; an interrupt would close the files under the writer
      waiting.add(new Ticket(WAKE_UP, new CompletableFuture<>()));
      try {
        running.join(Duration.ofSeconds(10).toMillis());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    follower.close();
  }

  private void run() {
    while (!stopping) {
      List<Ticket> tickets = new ArrayList<>();
      try {
        Ticket first = waiting.poll(SearchLimits.POLL.toMillis(), TimeUnit.MILLISECONDS);
        if (first != null) {
          tickets.add(first);
          waiting.drainTo(tickets);
        }
      } catch (InterruptedException e) {
        return;
      }
      if (!stopping) {
        tick(tickets);
      }
    }
  }

  private void tick(List<Ticket> tickets) {
    boolean well = follower.tick(tickets.stream().map(Ticket::report).toList());
    if (well && follower.live() == null) {
      tickets.stream().filter(ticket -> !ticket.seen().isDone()).forEach(waiting::add);
    } else {
      tickets.forEach(ticket -> ticket.seen().complete(well));
    }
  }

  /**
   * Waits until a report's current state is in the index. Call it after the transaction that wrote
   * the report has committed; the report is loaded at once, without waiting for its change row.
   *
   * @return false where it took longer than {@link SearchLimits#OWN_REPORT}; it will follow
   */
  public boolean awaitSeen(UUID report) {
    Ticket ticket = new Ticket(report, new CompletableFuture<>());
    waiting.add(ticket);
    try {
      return ticket.seen().get(SearchLimits.OWN_REPORT.toMillis(), TimeUnit.MILLISECONDS);
    } catch (ExecutionException | TimeoutException e) {
      ticket.seen().cancel(false);
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /**
   * Another number whenever comments have changed, which are shown with reports but not searched.
   */
  public int commented() {
    return follower.commented();
  }

  /**
   * Reads one state of the index.
   *
   * @throws IndexNotReady where there is none yet
   */
  public <T> T read(Generation.Read<T> read) {
    long giveUp = System.nanoTime() + SearchLimits.FIRST_INDEX.toNanos();
    while (true) {
      Generation live = follower.live();
      try {
        if (live != null) {
          return live.read(read);
        }
      } catch (AlreadyClosedException e) {
        LOG.debug("the index was replaced while it was read; reading the new one", e);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      pauseUntil(giveUp);
    }
  }

  private static void pauseUntil(long giveUp) {
    if (System.nanoTime() > giveUp) {
      throw new IndexNotReady();
    }
    try {
      TimeUnit.MILLISECONDS.sleep(20);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IndexNotReady();
    }
  }

  public Vocabulary vocabulary() {
    return vocabulary.get();
  }

  /** How it stands; cheap. */
  public IndexStatus status() {
    return follower.status(System.nanoTime(), SECOND);
  }

  /** Has a new index built beside the one in use, which goes on answering until it is ready. */
  public void rebuild() {
    follower.requestRebuild();
  }

  /** What the index holds. */
  public IndexHash hash() {
    return read(IndexHash::of);
  }

  /**
   * Compares the index with the database and has it rebuilt where they differ. Costs a read of
   * every report.
   *
   * @return true where they are equal
   */
  public boolean reconcile() {
    return follower.reconcile(this::hash);
  }
}

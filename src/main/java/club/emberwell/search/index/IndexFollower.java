package club.emberwell.search.index;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.change.ChangeFollower;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Footing;
import club.emberwell.entry.change.ChangeLog.Mark;
import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.entry.change.ChangeReader;
import club.emberwell.entry.change.GrowingPause;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.search.query.SearchLimits;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.apache.lucene.store.AlreadyClosedException;
import org.jboss.logging.Logger;

/**
 * Keeps one generation true to the database: each tick opens, replaces or brings it up to date.
 * Ticks come from one thread. Applying a change twice does no harm, because the current report is
 * loaded each time.
 */
final class IndexFollower implements ChangeReader {
  private static final Logger LOG = Logger.getLogger(IndexFollower.class);

  private static final Footing NONE = Footing.lost(false, "there is none that can be used");

  private final IndexFolder folder;
  private final ChangeLog log;
  private final ReportSource source;
  private final Supplier<Vocabulary> vocabulary;
  private final Rebuilding rebuilding;
  private final ChangeFollower changes;
  private volatile Generation live;
  private volatile boolean follows;
  private volatile long caughtUp = System.nanoTime();
  private volatile int drifts;
  private volatile int commented;
  private boolean looked;
  private String words = "";
  private TrialDocuments documents;
  private long committed = System.nanoTime();
  private int uncommitted;

  IndexFollower(
      IndexFolder folder,
      ChangeLog log,
      ReportSource source,
      Supplier<Vocabulary> vocabulary,
      GrowingPause pause) {
    this.folder = folder;
    this.log = log;
    this.source = source;
    this.vocabulary = vocabulary;
    this.changes = new ChangeFollower(log, this);
    this.rebuilding =
        new Rebuilding(
            stopped -> IndexBuild.run(folder, log, source, vocabulary.get(), stopped), pause);
  }

  /** The generation that answers, or null. */
  Generation live() {
    return live;
  }

  /**
   * Another number whenever comments have changed, which are shown with reports but not searched.
   */
  int commented() {
    return commented;
  }

  void requestRebuild() {
    rebuilding.ask("it was asked for");
  }

  /**
   * Brings the index up to date.
   *
   * @param wanted reports to load at once, whatever the change rows say
   * @return false where there was trouble
   */
  boolean tick(Collection<UUID> wanted) {
    return changes.attempt(
        () -> {
          changes.all();
          Generation at = live;
          if (at != null) {
            caughtUp = follows ? System.nanoTime() : caughtUp;
            finish(at, wanted);
          }
        });
  }

  private void finish(Generation at, Collection<UUID> wanted) {
    apply(at, wanted);
    if (!wanted.isEmpty()) {
      at.refresh();
    }
    if (uncommitted > 0 && System.nanoTime() - committed > SearchLimits.COMMIT.toNanos()) {
      commit(at);
    }
  }

  @Override
  public String name() {
    return "the search index";
  }

  @Override
  public int most() {
    return SearchLimits.BATCH;
  }

  @Override
  public Optional<Position> place() {
    follows = prepare();
    return follows ? Optional.of(live.stamp().known().last().position()) : Optional.empty();
  }

  /** False while there is no index that the change rows lead on from. */
  private boolean prepare() {
    takeOver();
    reopen();
    Generation at = live;
    read(vocabulary.get());
    Footing footing = at == null ? NONE : log.footing(at.stamp().known());
    if (!footing.follows()) {
      if (!footing.answers()) {
        retire();
      }
      rebuilding.need(footing.why());
      return false;
    }
    if (!at.stamp().vocabulary().equals(words)) {
      rebuilding.ask("the words of the club have changed");
    }
    return true;
  }

  @Override
  public void take(List<Change> some) {
    Set<UUID> reports = Change.ids(some, Set.of(EntryKind.REPORT));
    if (!Change.ids(some, Set.of(EntryKind.COMMENT)).isEmpty()) {
      commented++;
    }
    uncommitted += some.size();
    apply(live, reports);
  }

  @Override
  public void reached(Mark place) {
    Generation at = live;
    at.reached(at.stamp().at(place));
    at.refresh();
    if (uncommitted >= SearchLimits.CHANGES) {
      commit(at);
    }
  }

  private void read(Vocabulary current) {
    if (!current.contentHash().equals(words)) {
      words = current.contentHash();
      documents = new TrialDocuments(current);
    }
  }

  private void takeOver() {
    Optional<Generation> built = rebuilding.finished();
    if (built.isEmpty()) {
      return;
    }
    Generation made = built.get();
    Footing footing = log.footing(made.stamp().known());
    rebuilding.taken();
    if (!footing.follows()) {
      LOG.infof("The search index just built does not do: %s", footing.why());
      made.close();
      return;
    }
    Generation old = live;
    live = made;
    looked = true;
    uncommitted = 0;
    if (old != null) {
      old.close();
    }
    folder.deleteOld();
  }

  private void reopen() {
    Generation at = live;
    if (at != null && !at.isOpen()) {
      LOG.warn("The search index closed itself; opening it again at its last commit");
      at.close();
      live = null;
      looked = false;
    }
    if (live == null && !looked && !rebuilding.running()) {
      looked = true;
      live = folder.openNewest().orElse(null);
      uncommitted = 0;
    }
  }

  private void retire() {
    Generation at = live;
    live = null;
    if (at != null) {
      at.close();
    }
  }

  private void apply(Generation at, Collection<UUID> reports) {
    if (reports.isEmpty()) {
      return;
    }
    Set<UUID> gone = new LinkedHashSet<>(reports);
    for (ReportSnapshot report : source.byIds(reports)) {
      if (report.state() == EntryState.LIVE) {
        at.put(report.id(), documents.of(report));
        gone.remove(report.id());
      }
    }
    for (UUID report : gone) {
      at.put(report, List.of());
    }
  }

  private void commit(Generation at) {
    at.commit();
    uncommitted = 0;
    committed = System.nanoTime();
  }

  IndexStatus status(long now, long nanosASecond) {
    Generation at = live;
    int trials = 0;
    if (at != null) {
      try {
        trials = at.read(searcher -> searcher.getIndexReader().numDocs());
      } catch (IOException | AlreadyClosedException e) {
        LOG.debug("the index was replaced while its size was read", e);
      }
    }
    double lag = Math.max(0, now - caughtUp) / (double) nanosASecond;
    IndexStatus.Builds builds =
        new IndexStatus.Builds(rebuilding.running(), rebuilding.why(), rebuilding.left());
    return new IndexStatus(at != null, builds, trials, lag, rebuilding.count(), drifts);
  }

  /** Compares with the database, twice where needed: changes on their way are no difference. */
  boolean reconcile(Supplier<IndexHash> found) {
    for (int attempt = 0; attempt < 3; attempt++) {
      if (found.get().equals(IndexHash.of(source))) {
        return true;
      }
      try {
        TimeUnit.MILLISECONDS.sleep(4 * SearchLimits.POLL.toMillis());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return false;
      }
    }
    drifts++;
    LOG.error("The search index differs from the database; building a new one");
    rebuilding.need("it differs from the database");
    return false;
  }

  /** Commits what it can and lets go of the files. */
  void close() {
    rebuilding.stop();
    Generation at = live;
    live = null;
    if (at == null) {
      return;
    }
    try {
      if (at.isOpen()) {
        at.commit();
      }
      at.close();
    } catch (UncheckedIOException | AlreadyClosedException e) {
      LOG.warnf("The search index was not closed cleanly (%s); its last commit stands", e);
    }
  }
}

package club.emberwell.search.talk;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.search.index.Generation;
import club.emberwell.search.index.IndexStamp;
import club.emberwell.search.query.SearchLimits;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.jboss.logging.Logger;

/**
 * Questions and notices of the whole club, in memory: a year of talk is small beside the trials, so
 * it is read anew at every start and follows the change rows from there.
 */
@ApplicationScoped
class TalkIndex {
  private static final Logger LOG = Logger.getLogger(TalkIndex.class);
  private static final Set<String> ENTITIES =
      Set.of(TalkSource.QUESTION, TalkSource.NOTICE, TalkSource.ANSWER);

  private final ChangeLog log;
  private final TalkSource source;
  private final CatalogService catalog;
  private final Generation live;
  private Vocabulary words;
  private boolean troubled;

  TalkIndex(ChangeLog log, TalkSource source, CatalogService catalog) {
    this.log = log;
    this.source = source;
    this.catalog = catalog;
    try {
      IndexStamp nothing = new IndexStamp(new UUID(0, 0), new Position(0, 0), "");
      live = Generation.create(new ByteBuffersDirectory(), nothing);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Scheduled(every = "1s", concurrentExecution = ConcurrentExecution.SKIP)
  void follow() {
    try {
      upToDate();
      troubled = false;
    } catch (RuntimeException e) {
      // said once per outage; what is there goes on answering
      if (!troubled) {
        LOG.warn("the talk index cannot follow the database: " + e.getMessage());
      }
      troubled = true;
    }
  }

  /** Takes in everything that was committed before the call. */
  synchronized void upToDate() {
    try {
      Vocabulary now = catalog.vocabulary();
      UUID history = log.epoch();
      IndexStamp stamp = live.stamp();
      if (stamp.vocabulary().equals(now.contentHash())
          && stamp.epoch().equals(history)
          && !stamp.isBefore(log.trimmedTo())) {
        catchUp();
      } else {
        rebuild(now, history);
      }
      live.refresh();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Takes in the current state of these entries, whatever the change rows say yet. */
  synchronized void take(Collection<UUID> ids) {
    if (words == null) {
      upToDate();
      return;
    }
    try {
      apply(ids);
      live.refresh();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void rebuild(Vocabulary now, UUID history) throws IOException {
    IndexStamp reached = new IndexStamp(history, log.head(), now.contentHash());
    live.clear();
    long after = 0;
    List<TalkText> batch = source.liveAfter(after, SearchLimits.BATCH);
    while (!batch.isEmpty()) {
      put(batch, now);
      after = batch.stream().mapToLong(TalkText::number).reduce(after, Math::max);
      batch = source.liveAfter(after, SearchLimits.BATCH);
    }
    words = now;
    live.reached(reached);
  }

  private void catchUp() throws IOException {
    List<Change> changes;
    do {
      changes = log.since(live.stamp().position(), SearchLimits.CHANGES);
      Set<UUID> ids = new LinkedHashSet<>();
      changes.stream()
          .filter(change -> ENTITIES.contains(change.entity()))
          .forEach(change -> ids.add(change.id()));
      apply(ids);
      if (!changes.isEmpty()) {
        live.reached(live.stamp().at(changes.get(changes.size() - 1).position()));
      }
    } while (changes.size() == SearchLimits.CHANGES);
  }

  private void apply(Collection<UUID> ids) throws IOException {
    if (ids.isEmpty()) {
      return;
    }
    for (UUID id : ids) {
      live.put(id, List.of());
    }
    put(source.byIds(ids), words);
  }

  private void put(List<TalkText> texts, Vocabulary with) throws IOException {
    TalkDocuments documents = new TalkDocuments(with);
    for (TalkText text : texts) {
      live.put(text.id(), List.of(documents.of(text)));
    }
  }

  /** What a read of the index answers. */
  interface Read<T> {
    T from(IndexSearcher searcher, Vocabulary words) throws IOException;
  }

  <T> T read(Read<T> read) {
    Vocabulary now;
    synchronized (this) {
      if (words == null) {
        upToDate();
      }
      now = words;
    }
    try {
      return live.read(searcher -> read.from(searcher, now));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void close(@Observes ShutdownEvent event) throws IOException {
    live.close();
  }
}

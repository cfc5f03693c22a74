package club.emberwell.search.talk;

import club.emberwell.catalog.CatalogService;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.report.ChangeLog;
import club.emberwell.report.ChangeLog.Change;
import club.emberwell.report.ChangeLog.Position;
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
import org.apache.lucene.analysis.core.KeywordAnalyzer;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.SearcherFactory;
import org.apache.lucene.search.SearcherManager;
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
  private final IndexWriter writer;
  private final SearcherManager searchers;
  private Position position;
  private UUID epoch;
  private Vocabulary words;
  private boolean troubled;

  TalkIndex(ChangeLog log, TalkSource source, CatalogService catalog) {
    this.log = log;
    this.source = source;
    this.catalog = catalog;
    try {
      writer =
          new IndexWriter(new ByteBuffersDirectory(), new IndexWriterConfig(new KeywordAnalyzer()));
      searchers = new SearcherManager(writer, new SearcherFactory());
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
      boolean same = words != null && words.contentHash().equals(now.contentHash());
      if (!same || !history.equals(epoch) || isBehind(log.trimmedTo())) {
        rebuild(now, history);
      } else {
        catchUp();
      }
      searchers.maybeRefreshBlocking();
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
      searchers.maybeRefreshBlocking();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean isBehind(Position kept) {
    return position.xid() < kept.xid()
        || position.xid() == kept.xid() && position.seq() < kept.seq();
  }

  private void rebuild(Vocabulary now, UUID history) throws IOException {
    Position head = log.head();
    TalkDocuments documents = new TalkDocuments(now);
    writer.deleteAll();
    long after = 0;
    List<TalkText> batch = source.liveAfter(after, SearchLimits.BATCH);
    while (!batch.isEmpty()) {
      for (TalkText text : batch) {
        after = Math.max(after, text.number());
        writer.addDocument(documents.of(text));
      }
      batch = source.liveAfter(after, SearchLimits.BATCH);
    }
    words = now;
    epoch = history;
    position = head;
  }

  private void catchUp() throws IOException {
    List<Change> changes;
    do {
      changes = log.since(position, SearchLimits.CHANGES);
      Set<UUID> ids = new LinkedHashSet<>();
      changes.stream()
          .filter(change -> ENTITIES.contains(change.entity()))
          .forEach(change -> ids.add(change.id()));
      apply(ids);
      if (!changes.isEmpty()) {
        position = changes.get(changes.size() - 1).position();
      }
    } while (changes.size() == SearchLimits.CHANGES);
  }

  private void apply(Collection<UUID> ids) throws IOException {
    if (ids.isEmpty()) {
      return;
    }
    TalkDocuments documents = new TalkDocuments(words);
    for (UUID id : ids) {
      writer.deleteDocuments(new Term(TalkDocuments.ID, id.toString()));
    }
    for (TalkText text : source.byIds(ids)) {
      writer.updateDocument(new Term(TalkDocuments.ID, text.id().toString()), documents.of(text));
    }
  }

  /** What a read of the index answers. */
  public interface Read<T> {
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
      IndexSearcher searcher = searchers.acquire();
      try {
        return read.from(searcher, now);
      } finally {
        searchers.release(searcher);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void close(@Observes ShutdownEvent event) throws IOException {
    searchers.close();
    writer.close();
  }
}

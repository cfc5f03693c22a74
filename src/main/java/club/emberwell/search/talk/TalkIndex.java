package club.emberwell.search.talk;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.change.ChangeFollower;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Known;
import club.emberwell.entry.change.ChangeLog.Mark;
import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.entry.change.ChangeReader;
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
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.store.ByteBuffersDirectory;

/**
 * Questions and notices of the whole club, in memory: a year of talk is small beside the trials, so
 * it is read anew at every start and follows the change rows from there.
 */
@ApplicationScoped
class TalkIndex implements ChangeReader {
  private final ChangeLog log;
  private final TalkSource source;
  private final CatalogService catalog;
  private final ChangeFollower changes;
  private final Generation live;
  private Vocabulary words;

  TalkIndex(ChangeLog log, TalkSource source, CatalogService catalog) {
    this.log = log;
    this.source = source;
    this.catalog = catalog;
    this.changes = new ChangeFollower(log, this);
    try {
      IndexStamp nothing = new IndexStamp(Known.NOTHING, "");
      live = Generation.create(new ByteBuffersDirectory(), nothing);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** While the database is away, what is there goes on answering. */
  @Scheduled(every = "1s", concurrentExecution = ConcurrentExecution.SKIP)
  void follow() {
    changes.attempt(this::upToDate);
  }

  /** Takes in everything that was committed before the call. */
  synchronized void upToDate() {
    changes.all();
    live.refresh();
  }

  @Override
  public String name() {
    return "the talk index";
  }

  @Override
  public int most() {
    return SearchLimits.BATCH;
  }

  @Override
  public Optional<Position> place() {
    Vocabulary now = catalog.vocabulary();
    if (!live.stamp().vocabulary().equals(now.contentHash())
        || !log.footing(live.stamp().known()).follows()) {
      rebuild(now);
    }
    return Optional.of(live.stamp().known().last().position());
  }

  @Override
  public void take(List<Change> some) {
    Set<UUID> ids = Change.ids(some, EntryKind.TALK);
    apply(ids);
  }

  @Override
  public void reached(Mark place) {
    live.reached(live.stamp().at(place));
  }

  /** Takes in the current state of these entries, whatever the change rows say yet. */
  synchronized void show(Collection<UUID> ids) {
    if (words == null) {
      upToDate();
      return;
    }
    apply(ids);
    live.refresh();
  }

  private void rebuild(Vocabulary now) {
    IndexStamp reached = new IndexStamp(log.head(), now.contentHash());
    live.clear();
    put(source.live(SearchLimits.BATCH), now);
    words = now;
    live.reached(reached);
  }

  private void apply(Collection<UUID> ids) {
    if (ids.isEmpty()) {
      return;
    }
    for (UUID id : ids) {
      live.put(id, List.of());
    }
    put(source.byIds(ids).stream(), words);
  }

  private void put(Stream<TalkText> texts, Vocabulary with) {
    TalkDocuments documents = new TalkDocuments(with);
    texts.forEach(text -> live.put(text.id(), List.of(documents.of(text))));
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

  void close(@Observes ShutdownEvent event) {
    live.close();
  }
}

package club.emberwell.talk.watch;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.change.ChangeFollower;
import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.StoredReaders;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.search.talk.Newcomers;
import club.emberwell.search.talk.TalkSearch;
import club.emberwell.search.talk.TalkSource;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.TalkRepository;
import club.emberwell.talk.watch.WatchHitRepository.Hit;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Holds what became live against all watches. One node at a time does it, following the change
 * rows; each run takes a bounded number of them, and the same entry is found once by a watch
 * whatever happens to it later.
 */
@ApplicationScoped
public class WatchMatcher {
  private static final UUID FIRST = new UUID(0, 0);

  private final WatchRepository watches;
  private final WatchHitRepository hits;
  private final TalkRepository entries;
  private final ChangeFollower changes;
  private final ReportSource reports;
  private final TalkSource talk;
  private final TalkSearch search;
  private final CatalogService catalog;

  WatchMatcher(
      WatchRepository watches,
      WatchHitRepository hits,
      TalkRepository entries,
      StoredReaders readers,
      ReportSource reports,
      TalkSource talk,
      TalkSearch search,
      CatalogService catalog) {
    this.watches = watches;
    this.hits = hits;
    this.entries = entries;
    this.changes = readers.following("watches", TalkLimits.MATCH_RUN, this::take);
    this.reports = reports;
    this.talk = talk;
    this.search = search;
    this.catalog = catalog;
  }

  /** Something that may be news to a member. */
  private record News(UUID author, Instant createdAt) {}

  @Scheduled(every = "${emberwell.watches.every}", concurrentExecution = ConcurrentExecution.SKIP)
  void run() {
    changes.attempt(changes::all);
  }

  /**
   * Takes the next changes, in one transaction.
   *
   * @return true where there are more
   */
  public boolean matchSome() {
    return changes.some();
  }

  private void take(List<Change> some) {
    Instant now = Instant.now();
    hits.add(
        Stream.concat(
                told(entries::answersWithAsker, Change.ids(some, Set.of(EntryKind.ANSWER))),
                told(entries::commentsWithReaders, Change.ids(some, Set.of(EntryKind.COMMENT))))
            .toList(),
        now);
    if (watches.count() > 0) {
      match(some, now);
    }
  }

  /**
   * Without a watch whoever asked is told of every answer, and of every comment whose report it is
   * and who commented on it before.
   */
  private static Stream<Hit> told(
      Function<Collection<UUID>, List<Object[]>> whom, Set<UUID> replies) {
    return replies.isEmpty()
        ? Stream.empty()
        : whom.apply(replies).stream()
            .map(row -> new Hit((UUID) row[1], null, (UUID) row[0], false));
  }

  private void match(List<Change> some, Instant now) {
    Set<UUID> reportIds = Change.ids(some, Set.of(EntryKind.REPORT));
    List<ReportSnapshot> live =
        reports.byIds(reportIds).stream().filter(r -> r.state() == EntryState.LIVE).toList();
    Set<UUID> talkIds = Change.ids(some, Set.of(EntryKind.QUESTION, EntryKind.NOTICE));
    Map<UUID, News> news = new HashMap<>();
    live.forEach(r -> news.put(r.id(), new News(r.author().id(), r.createdAt())));
    entries.live(talkIds).forEach(e -> news.put(e.id(), new News(e.memberId(), e.createdAt())));
    if (news.isEmpty()) {
      return;
    }
    List<UUID> inOrder =
        some.stream().map(Change::id).distinct().filter(news::containsKey).toList();
    try (Newcomers fresh = search.newcomers(live, talk.byIds(talkIds))) {
      Map<String, Set<UUID>> matching = new HashMap<>();
      List<WatchEntity> batch = watches.activeAfter(FIRST, TalkLimits.WATCH_BATCH);
      while (!batch.isEmpty()) {
        List<Hit> batchHits = new ArrayList<>();
        for (UUID id : inOrder) {
          for (WatchEntity watch : batch) {
            if (matching
                .computeIfAbsent(watch.query(), query -> matching(fresh, query))
                .contains(id)) {
              add(batchHits, watch, id, news.get(id));
            }
          }
        }
        hits.add(batchHits, now);
        UUID last = batch.get(batch.size() - 1).id();
        batch = watches.activeAfter(last, TalkLimits.WATCH_BATCH);
      }
    }
  }

  private static void add(List<Hit> to, WatchEntity watch, UUID id, News news) {
    boolean own = news.author().equals(watch.memberId());
    if (!own && !news.createdAt().isBefore(watch.createdAt())) {
      to.add(new Hit(watch.memberId(), watch.id(), id, watch.mail()));
    }
  }

  private Set<UUID> matching(Newcomers fresh, String query) {
    return fresh.matching(
        SearchQueryCodec.read(QueryString.parse(query), catalog.vocabulary(), Set.of()).query());
  }
}

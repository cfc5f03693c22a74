package club.emberwell.talk;

import club.emberwell.catalog.CatalogService;
import club.emberwell.report.ChangeLog;
import club.emberwell.report.ChangeLog.Change;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.report.ReportState;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.search.talk.NewcomerSearch;
import club.emberwell.search.talk.Newcomers;
import club.emberwell.search.talk.TalkSource;
import club.emberwell.talk.WatchHitRepository.Hit;
import club.emberwell.talk.WatchRepository.Progress;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;

/**
 * Holds what became live against all watches. One node at a time does it, following the change
 * rows; each run takes a bounded number of them, and the same entry is found once by a watch
 * whatever happens to it later.
 */
@ApplicationScoped
public class WatchMatcher {
  private static final Logger LOG = Logger.getLogger(WatchMatcher.class);
  private static final String REPORT = "report";
  private static final UUID FIRST = new UUID(0, 0);
  private static final int SECONDS = 300;

  private final WatchRepository watches;
  private final WatchHitRepository hits;
  private final TalkEntryRepository entries;
  private final ChangeLog changes;
  private final ReportSource reports;
  private final TalkSource talk;
  private final NewcomerSearch search;
  private final CatalogService catalog;
  private boolean troubled;

  WatchMatcher(
      WatchRepository watches,
      WatchHitRepository hits,
      TalkEntryRepository entries,
      ChangeLog changes,
      ReportSource reports,
      TalkSource talk,
      NewcomerSearch search,
      CatalogService catalog) {
    this.watches = watches;
    this.hits = hits;
    this.entries = entries;
    this.changes = changes;
    this.reports = reports;
    this.talk = talk;
    this.search = search;
    this.catalog = catalog;
  }

  /** Something that may be news to a member. */
  private record News(String entity, UUID author, Instant createdAt) {}

  @Scheduled(every = "${emberwell.watches.every}", concurrentExecution = ConcurrentExecution.SKIP)
  void run() {
    try {
      while (matchSome()) {
        LOG.debug("more changes wait for the watches");
      }
      troubled = false;
    } catch (RuntimeException e) {
      // said once per outage; the next run begins where the last one ended
      if (!troubled) {
        LOG.warn("watches cannot be served: " + e.getMessage());
      }
      troubled = true;
    }
  }

  /**
   * Takes the next changes, in one transaction.
   *
   * @return true where there are more
   */
  public boolean matchSome() {
    return QuarkusTransaction.requiringNew().timeout(SECONDS).call(this::next);
  }

  private boolean next() {
    Progress progress = watches.claimProgress().orElse(null);
    if (progress == null) {
      return false;
    }
    UUID epoch = changes.epoch();
    if (!epoch.equals(progress.epoch())) {
      watches.saveProgress(epoch, changes.head());
      return false;
    }
    List<Change> some = changes.since(progress.position(), TalkLimits.MATCH_RUN);
    if (some.isEmpty()) {
      return false;
    }
    Instant now = Instant.now();
    answered(ids(some, TalkSource.ANSWER), now);
    if (watches.count() > 0) {
      match(some, now);
    }
    watches.saveProgress(epoch, some.get(some.size() - 1).position());
    return some.size() == TalkLimits.MATCH_RUN;
  }

  private static Set<UUID> ids(List<Change> changes, String entity) {
    return changes.stream()
        .filter(change -> change.entity().equals(entity))
        .map(Change::id)
        .collect(Collectors.toSet());
  }

  /** Whoever asked is told of every answer, without a watch. */
  private void answered(Set<UUID> answers, Instant now) {
    if (answers.isEmpty()) {
      return;
    }
    hits.add(
        entries.answersWithAsker(answers).stream()
            .map(row -> new Hit((UUID) row[1], null, TalkSource.ANSWER, (UUID) row[0], false))
            .toList(),
        now);
  }

  private void match(List<Change> some, Instant now) {
    Set<UUID> reportIds = ids(some, REPORT);
    List<ReportSnapshot> live =
        reports.byIds(reportIds).stream().filter(r -> r.state() == ReportState.LIVE).toList();
    Set<UUID> talkIds = ids(some, TalkSource.QUESTION);
    talkIds.addAll(ids(some, TalkSource.NOTICE));
    Map<UUID, News> news = new HashMap<>();
    live.forEach(r -> news.put(r.id(), new News(REPORT, r.author().id(), r.createdAt())));
    entries
        .live(talkIds)
        .forEach(e -> news.put(e.id(), new News(e.kind().code(), e.memberId(), e.createdAt())));
    if (news.isEmpty()) {
      return;
    }
    List<UUID> inOrder =
        some.stream().map(Change::id).distinct().filter(news::containsKey).toList();
    try (Newcomers fresh = search.of(live, talk.byIds(talkIds))) {
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
      to.add(new Hit(watch.memberId(), watch.id(), news.entity(), id, watch.mail()));
    }
  }

  private Set<UUID> matching(Newcomers fresh, String query) {
    return fresh.matching(
        SearchQueryCodec.read(QueryString.parse(query), catalog.vocabulary(), Set.of()).query());
  }
}

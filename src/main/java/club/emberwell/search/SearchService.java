package club.emberwell.search;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.EntryState;
import club.emberwell.laser.Laser;
import club.emberwell.listing.PartRefused;
import club.emberwell.member.Actor;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.search.column.ColumnReader;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.search.match.QueryParts;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.SearchQuery;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;
import org.apache.lucene.search.IndexSearcher;

/** Answers searches from this node's index. */
public final class SearchService {
  private final SearchIndex index;
  private final ReportSource source;
  private final BiFunction<UUID, Actor, Optional<Laser>> machines;
  private final KeptWork works = new KeptWork();
  private Object named;
  private String name;

  /**
   * @param machines the laser of a machine for those who may see it
   */
  SearchService(
      SearchIndex index, ReportSource source, BiFunction<UUID, Actor, Optional<Laser>> machines) {
    this.index = index;
    this.source = source;
    this.machines = machines;
  }

  private record Found(
      FacetCounts counts,
      Map<UUID, List<Integer>> page,
      String next,
      List<SearchResult.FacetList> facets,
      Map<String, Set<String>> guesses,
      List<SearchResult.Suggestion> suggestions) {}

  /**
   * One page of hits, with totals and facets. The reports of the page are loaded as they are now;
   * the totals are as of the index, at most seconds behind.
   *
   * @throws IndexNotReady while there is no index
   */
  public SearchResult search(SearchQuery query, Actor actor) {
    return page(query, actor, null).result();
  }

  /**
   * What was found, and where it goes on.
   *
   * @param next text of the cursor behind the last hit, null at the end
   */
  public record Page(SearchResult result, String next) {}

  /**
   * The same behind a cursor, so that nothing is met twice or missed while somebody posts.
   *
   * @param cursor null = the page that the query names
   * @throws PartRefused for a cursor of another search
   */
  public Page page(SearchQuery query, Actor actor, String cursor) {
    Optional<Laser> mine =
        Optional.ofNullable(query.near()).flatMap(machine -> machines.apply(machine, actor));
    Order order = order(query, mine);
    HitOrder hitOrder = new HitOrder(order, mine.map(Closeness::new).orElse(null));
    HitCursor place = HitCursor.of(query, order, cursor);
    Found found = index.read(searcher -> find(searcher, query, hitOrder, place));
    List<ReportSnapshot> live =
        source.shown(found.page().keySet()).stream()
            .filter(report -> report.state() == EntryState.LIVE)
            .toList();
    SearchResult result =
        new SearchResult(
            query,
            order,
            found.counts().reports(),
            found.counts().trials(),
            PageHits.withReports(found.page(), live),
            found.facets(),
            found.guesses(),
            found.suggestions());
    return new Page(result, found.next());
  }

  private static Order order(SearchQuery query, Optional<Laser> mine) {
    return Order.effective(mine.isPresent() ? query : query.withNear(null));
  }

  private Found find(IndexSearcher searcher, SearchQuery query, HitOrder order, HitCursor place)
      throws IOException {
    Vocabulary vocabulary = index.vocabulary();
    Object now = state(searcher);
    QueryParts parts = QueryParts.of(query, vocabulary, searcher.getIndexReader());
    int from = query.page() * query.size();
    int to = from + query.size();
    SearchPass.Wanted wanted =
        new SearchPass.Wanted(order, to + 1, place.after(searcher, parts, order));
    FacetCounts counts = works.get(now, query, FacetCounts.class, "").orElse(null);
    List<TopReports.Entry> best;
    if (counts == null) {
      SearchPass.Found full = SearchPass.full(searcher, parts, wanted);
      counts = full.counts();
      best = full.best();
      works.put(now, query, FacetCounts.class, "", counts, 0);
    } else {
      best = SearchPass.hits(searcher, parts, wanted).best();
    }
    List<TopReports.Entry> page =
        best.subList(Math.min(from, best.size()), Math.min(to, best.size()));
    Map<UUID, List<Integer>> hits = PageHits.of(searcher, parts, page);
    String next = null;
    if (best.size() > to) {
      List<UUID> ids = List.copyOf(hits.keySet());
      next = place.behind(page.get(page.size() - 1), ids.get(ids.size() - 1));
    }
    return new Found(
        counts,
        hits,
        next,
        FacetLists.of(query, counts, vocabulary),
        parts.guesses(),
        NoHits.suggestions(query, counts, vocabulary, searcher));
  }

  /** Names what an answer was worked out from: equal as long as neither index nor words change. */
  private Object state(IndexSearcher searcher) {
    return List.of(
        searcher.getIndexReader().getReaderCacheHelper().getKey(),
        index.vocabulary().contentHash());
  }

  /**
   * Names the state of the index, of the words and of comments in this process: another text
   * whenever one of them has changed, so that who was told it need not be answered again.
   */
  public synchronized String generation() {
    Object now = List.of(index.read(this::state), index.commented());
    if (!now.equals(named)) {
      named = now;
      name = UUID.randomUUID().toString();
    }
    return name;
  }

  /**
   * Something worked out of what a search meets, made once for as long as the index and the words
   * stay the same.
   *
   * @param type what is worked out, with {@code part} its name among those of one search
   * @param held how many trials it holds in memory
   */
  public <T> T kept(
      SearchQuery query, Class<T> type, Object part, Supplier<T> work, ToIntFunction<T> held) {
    Object now = index.read(this::state);
    return works
        .get(now, query, type, part)
        .orElseGet(
            () -> {
              T made = work.get();
              works.put(now, query, type, part, made, held.applyAsInt(made));
              return made;
            });
  }

  /** How many trials there are in all. */
  public int trials() {
    return index.read(searcher -> searcher.getIndexReader().numDocs());
  }

  /**
   * The numbers of every trial that matches, whatever the page: what ranges are computed from.
   *
   * @throws IndexNotReady while there is no index
   */
  public TrialColumns columns(SearchQuery query) {
    Vocabulary vocabulary = index.vocabulary();
    return index.read(
        searcher -> {
          QueryParts parts = QueryParts.of(query, vocabulary, searcher.getIndexReader());
          return ColumnReader.read(searcher, parts.matching(), vocabulary);
        });
  }

  /**
   * Which trials match, whatever the page.
   *
   * @param most that are wanted
   * @throws IndexNotReady while there is no index
   */
  public MatchedTrials trials(SearchQuery query, int most) {
    Vocabulary vocabulary = index.vocabulary();
    return index.read(
        searcher -> {
          QueryParts parts = QueryParts.of(query, vocabulary, searcher.getIndexReader());
          return MatchedTrials.read(searcher, parts.matching(), most);
        });
  }
}

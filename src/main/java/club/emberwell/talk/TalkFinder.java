package club.emberwell.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.talk.TalkSearch;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/** Finds questions and notices by the same words as everything else: one statement each. */
@ApplicationScoped
public class TalkFinder {
  private final TalkSearch search;
  private final TalkRepository entries;

  TalkFinder(TalkSearch search, TalkRepository entries) {
    this.search = search;
    this.entries = entries;
  }

  /** The few questions and notices that concern a search, the closest first. */
  @Transactional
  public List<TalkEntry> about(SearchQuery query) {
    return load(search.about(query, TalkLimits.BESIDE));
  }

  /** The few that resemble a text while it is being typed. */
  @Transactional
  public List<TalkEntry> similar(String text) {
    return load(search.similar(text, TalkLimits.BESIDE));
  }

  /**
   * Questions or notices that hold every word, by page the best first; where there is no word,
   * those asked, announced or answered last first. By cursor those asked or announced last first,
   * since neither of these orders stands still while somebody writes.
   *
   * @param text words, or null
   * @param unanswered only questions without an answer
   */
  @Transactional
  public Slice<TalkEntry> find(EntryKind kind, String text, boolean unanswered, Part part) {
    ListOrder order = ListOrder.newestFirst(kind.code(), TalkLimits.PAGE);
    if (text != null && !text.isBlank()) {
      TalkSearch.Wanted wanted = new TalkSearch.Wanted(kind, text, unanswered);
      return Slice.read(
              part,
              order,
              place -> part.byCursor() ? search.newest(wanted, place) : search.best(wanted, place),
              found -> List.of(found.number()))
          .map(TalkSearch.Found::id)
          .all(this::load);
    }
    return Slice.read(
        part,
        order,
        place ->
            part.byCursor()
                ? entries.newest(kind, unanswered, place)
                : entries.latest(kind, unanswered, place),
        entry -> List.of(entry.createdAt(), entry.id()));
  }

  /** Live ones of a kind, those written last first. */
  @Transactional
  public List<TalkEntry> newest(EntryKind kind, int most) {
    return entries.newest(kind, most);
  }

  /** Those of these that are live, in no particular order. */
  @Transactional
  public List<TalkEntry> live(Collection<UUID> ids) {
    return entries.live(ids);
  }

  /** Lets the writer find their own entry at once; after the transaction that wrote it. */
  public void show(TalkEntry entry) {
    search.show(List.of(entry.id()));
  }

  private List<TalkEntry> load(List<UUID> ids) {
    Map<UUID, TalkEntry> byId = new HashMap<>();
    entries.live(ids).forEach(entry -> byId.put(entry.id(), entry));
    return ids.stream().map(byId::get).filter(Objects::nonNull).toList();
  }
}

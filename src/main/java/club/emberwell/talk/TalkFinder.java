package club.emberwell.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.listing.Slice;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.talk.TalkSearch;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
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
   * Questions or notices that hold every word, the best first; where there is none, those asked,
   * announced or answered last first.
   *
   * @param text words, or null
   * @param unanswered only questions without an answer
   */
  @Transactional
  public Slice<TalkEntry> find(EntryKind kind, String text, boolean unanswered, int page) {
    if (text == null || text.isBlank()) {
      return Slice.read(
          page, TalkLimits.PAGE, (from, most) -> entries.latest(kind, unanswered, from, most));
    }
    return Slice.read(
            page, TalkLimits.PAGE, (from, most) -> search.find(kind, text, unanswered, from, most))
        .all(this::load);
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

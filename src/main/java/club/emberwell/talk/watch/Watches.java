package club.emberwell.talk.watch;

import club.emberwell.bench.FieldReader;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryAccess;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.search.query.QueryLabel;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.search.query.SearchQueryCodec.Parsed;
import club.emberwell.talk.TalkLimits;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;

/** Keeps searches and gives out their feeds. */
@ApplicationScoped
public class Watches {
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final int TOKEN_BYTES = 32;
  private static final Pattern TOKEN = Pattern.compile("[A-Za-z0-9_-]{43}");

  private final WatchRepository watches;
  private final WatchHitRepository hits;
  private final CatalogService catalog;

  Watches(WatchRepository watches, WatchHitRepository hits, CatalogService catalog) {
    this.watches = watches;
    this.hits = hits;
    this.catalog = catalog;
  }

  /**
   * Keeps a search; the same search twice is one watch.
   *
   * @param query the part of a search's address behind the question mark
   * @param label what to call it; null or blank: its own words
   * @throws EntryRefused where the search cannot be read, or there are too many
   */
  @Transactional
  public Watch add(Actor actor, String query, String label, boolean mail) {
    UUID member = EntryAccess.signedIn(actor);
    SearchQuery search = read(query, actor.units().style());
    String kept = SearchQueryCodec.write(search);
    if (kept.length() > TalkLimits.WATCH_QUERY) {
      throw new EntryRefused(tooLong());
    }
    List<WatchEntity> own = watches.of(member);
    Optional<WatchEntity> same = own.stream().filter(w -> w.query().equals(kept)).findFirst();
    if (same.isPresent()) {
      return same.get().toWatch();
    }
    if (own.size() >= TalkLimits.WATCHES) {
      String detail = "You have " + TalkLimits.WATCHES + " watches. Delete one first.";
      throw new EntryRefused(RemarkId.TOO_MANY, "", detail);
    }
    WatchEntity watch = new WatchEntity(UUID.randomUUID(), member, kept, Instant.now());
    watch.change(label(label, search), mail);
    watches.persist(watch);
    return watch.toWatch();
  }

  private SearchQuery read(String query, NumberStyle style) {
    String given = query == null ? "" : query;
    if (given.length() > TalkLimits.WATCH_QUERY) {
      throw new EntryRefused(tooLong());
    }
    Parsed parsed =
        SearchQueryCodec.read(QueryString.parse(given), catalog.vocabulary(), Set.of(), style);
    if (!parsed.problems().isEmpty()) {
      throw new EntryRefused(
          parsed.problems().stream().map(remark -> remark.at("/query")).toList());
    }
    return parsed.query().unordered().withPage(0);
  }

  private static Remark tooLong() {
    String detail = "At most " + TalkLimits.WATCH_QUERY + " characters of a search are kept.";
    return Remark.error(RemarkId.TEXT_TOO_LONG, "/query", detail);
  }

  private String label(String given, SearchQuery search) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String label = in.text("/label", given, TalkLimits.WATCH_LABEL, false);
    Remarks.refuse(in.remarks());
    String words = label == null ? QueryLabel.of(search, catalog.vocabulary()) : label;
    return words.length() > TalkLimits.WATCH_LABEL
        ? words.substring(0, words.offsetByCodePoints(0, TalkLimits.WATCH_LABEL - 1)) + "…"
        : words;
  }

  /** In the order they were made. */
  @Transactional
  public List<Watch> of(Actor actor) {
    return watches.of(EntryAccess.signedIn(actor)).stream().map(WatchEntity::toWatch).toList();
  }

  @Transactional
  public Watch get(Actor actor, UUID id) {
    return own(actor, id).toWatch();
  }

  /**
   * Renames a watch and says whether its finds come by mail.
   *
   * @throws EntryChanged where it was changed since
   */
  @Transactional
  public Watch change(Actor actor, UUID id, int version, String label, boolean mail) {
    WatchEntity watch = own(actor, id);
    if (watch.version() != version) {
      throw new EntryChanged(watch.version());
    }
    watch.change(label(label, read(watch.query(), NumberStyle.ANY)), mail);
    return watch.toWatch();
  }

  /** Ends a watch with everything it found and its feed. A second time does nothing. */
  @Transactional
  public void remove(Actor actor, UUID id) {
    watches.own(id, EntryAccess.signedIn(actor)).ifPresent(watches::delete);
  }

  /** Gives the watch a feed; where it had one, its old address is dead from now on. */
  @Transactional
  public Watch renewFeed(Actor actor, UUID id) {
    byte[] bytes = new byte[TOKEN_BYTES];
    RANDOM.nextBytes(bytes);
    WatchEntity watch = own(actor, id);
    watch.feed(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    return watch.toWatch();
  }

  @Transactional
  public Watch stopFeed(Actor actor, UUID id) {
    WatchEntity watch = own(actor, id);
    watch.feed(null);
    return watch.toWatch();
  }

  /** What a feed's address leads to; empty for whatever is not one, or whose owner is gone. */
  @Transactional
  public Optional<Feed> feed(String token) {
    return TOKEN.matcher(token).matches() ? hits.feed(token, TalkLimits.FEED) : Optional.empty();
  }

  private WatchEntity own(Actor actor, UUID id) {
    return watches
        .own(id, EntryAccess.signedIn(actor))
        .orElseThrow(() -> new EntryUnknown("watch"));
  }
}

package club.emberwell.web.talk;

import club.emberwell.catalog.TermKind;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.member.Actor;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.talk.Markdown;
import club.emberwell.talk.SafeHtml;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.Ties;
import club.emberwell.talk.WrittenTalk;
import club.emberwell.web.range.RangeView;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What the club knows already, before a question is posted. */
@ApplicationScoped
class Beforehand {
  /** Ranges in sight; the search shows all. */
  private static final int RANGES = 3;

  private final TalkFinder finder;
  private final ConsensusService consensus;
  private final TieLabels labels;

  Beforehand(TalkFinder finder, ConsensusService consensus, TieLabels labels) {
    this.finder = finder;
    this.consensus = consensus;
    this.labels = labels;
  }

  /**
   * What is shown before posting.
   *
   * @param ranges of the same work, the largest first
   * @param search where all of them are, or null
   * @param preview the text as it will stand, or null while it is being typed
   */
  record Known(List<EntryLine> similar, List<RangeView> ranges, String search, SafeHtml preview) {
    public boolean isNothing() {
      return similar.isEmpty() && ranges.isEmpty();
    }
  }

  /**
   * @param written as {@link club.emberwell.talk.TalkService#preview} answers it
   */
  Known of(WrittenTalk written, Actor actor) {
    return known(written, Markdown.render(written.text()), actor);
  }

  private Known known(WrittenTalk written, SafeHtml preview, Actor actor) {
    SearchQuery work = labels.search(written.ties());
    boolean narrow = written.ties().material() != null || written.ties().coating() != null;
    try {
      return new Known(
          similar(written, work),
          narrow ? ranges(work, actor) : List.of(),
          narrow ? "/?" + SearchQueryCodec.write(work) : null,
          preview);
    } catch (IndexNotReady e) {
      // a question can be asked while nothing can be found
      return new Known(List.of(), List.of(), null, preview);
    }
  }

  /**
   * The same while a title is being typed. A material or coating that is not named by itself is
   * looked for in the title, and what means nothing yet is left out.
   */
  Known soFar(String title, String material, String coating, Actor actor) {
    String typed = cut(title);
    Ties ties =
        new Ties(
            named(TermKind.MATERIAL, material, typed),
            named(TermKind.COATING, coating, typed),
            null,
            null,
            null,
            null,
            null);
    return known(new WrittenTalk(typed, "", ties), null, actor);
  }

  private static String cut(String text) {
    String given = text == null ? "" : text.strip();
    return given.length() > TalkLimits.TITLE ? given.substring(0, TalkLimits.TITLE) : given;
  }

  private String named(TermKind kind, String field, String title) {
    String text = cut(field);
    return labels.slugIn(kind, text.isEmpty() ? title : text).orElse(null);
  }

  private List<EntryLine> similar(WrittenTalk written, SearchQuery work) {
    Map<UUID, TalkEntry> found = new LinkedHashMap<>();
    finder.similar(written.title()).forEach(entry -> found.putIfAbsent(entry.id(), entry));
    finder.about(work).forEach(entry -> found.putIfAbsent(entry.id(), entry));
    return EntryLine.of(found.values().stream().limit(TalkLimits.BESIDE).toList(), labels);
  }

  private List<RangeView> ranges(SearchQuery work, Actor actor) {
    List<RangeView> views = new ArrayList<>();
    consensus.ranges(work).stream()
        .limit(RANGES)
        .forEach(range -> views.add(RangeView.of(range, actor.units(), "known" + views.size())));
    return views;
  }
}

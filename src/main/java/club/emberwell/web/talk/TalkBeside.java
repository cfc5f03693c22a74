package club.emberwell.web.talk;

import club.emberwell.search.index.IndexNotReady;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.TalkService;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.util.List;
import java.util.UUID;

/** What is talked about beside something else. */
@Named("talkBeside")
@ApplicationScoped
public class TalkBeside {
  private final TalkService talk;
  private final TalkFinder finder;
  private final TieLabels labels;

  TalkBeside(TalkService talk, TalkFinder finder, TieLabels labels) {
    this.talk = talk;
    this.finder = finder;
    this.labels = labels;
  }

  /** The few questions and notices that concern a search: one statement. */
  public List<EntryLine> search(SearchQuery query) {
    try {
      return EntryLine.of(finder.about(query), labels);
    } catch (IndexNotReady e) {
      return List.of();
    }
  }

  /** The newest that are tied to a report. */
  public List<EntryLine> report(String id) {
    return EntryLine.of(
        talk.aboutReport(UUID.fromString(id)).stream().limit(TalkLimits.BESIDE).toList(), labels);
  }
}

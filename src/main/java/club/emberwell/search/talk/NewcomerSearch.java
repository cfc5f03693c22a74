package club.emberwell.search.talk;

import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.index.SearchIndex;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;

/** Sets new entries apart, to hold kept searches against them. */
@ApplicationScoped
public class NewcomerSearch {
  private final SearchIndex index;
  private final TalkIndex talk;

  NewcomerSearch(SearchIndex index, TalkIndex talk) {
    this.index = index;
    this.talk = talk;
  }

  /** The caller closes what it gets. */
  public Newcomers of(Collection<ReportSnapshot> reports, Collection<TalkText> texts) {
    return Newcomers.of(index, talk, reports, texts);
  }
}

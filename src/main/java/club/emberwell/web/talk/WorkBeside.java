package club.emberwell.web.talk;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.member.Actor;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.talk.Ties;
import club.emberwell.web.answer.AnswerView;
import club.emberwell.web.answer.AnswerViews;
import club.emberwell.web.range.WorksView;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** What members used for the work that a question is about; it stands beside the question. */
@ApplicationScoped
class WorkBeside {
  /** Works listed where the question's ties mean several. */
  private static final int WORKS = 5;

  private static final Known NOTHING = new Known(List.of(), new WorksView(List.of(), null, 0), "");

  private final ConsensusService consensus;
  private final AnswerViews answers;
  private final CatalogService catalog;
  private final TieLabels labels;

  WorkBeside(
      ConsensusService consensus, AnswerViews answers, CatalogService catalog, TieLabels labels) {
    this.consensus = consensus;
    this.answers = answers;
    this.catalog = catalog;
    this.labels = labels;
  }

  /**
   * One answer, or the works to choose from.
   *
   * @param search address of the reports behind it
   */
  record Known(List<AnswerView> panels, WorksView works, String search) {
    public boolean isNothing() {
      return panels.isEmpty() && works.sections().isEmpty();
    }
  }

  /** Nothing where neither a material nor a coating is named, or while nothing can be found. */
  Known of(Ties ties, Actor actor) {
    if (ties.material() == null && ties.coating() == null) {
      return NOTHING;
    }
    SearchQuery query = labels.search(ties);
    try {
      ConsensusService.Answer found =
          consensus.answer(new ConsensusService.Ask(query, actor, null, null, false));
      WorksView.Reader reader =
          new WorksView.Reader(query, catalog.vocabulary(), actor.units(), "/?");
      List<AnswerView> panels =
          found.one().isPresent() ? answers.onFind(found, query, actor) : List.of();
      return new Known(
          panels,
          panels.isEmpty()
              ? WorksView.of(AnswerViews.otherWorks(found), reader, WORKS)
              : NOTHING.works(),
          "/?" + SearchQueryCodec.write(query));
    } catch (IndexNotReady e) {
      return NOTHING;
    }
  }
}

package club.emberwell.search.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.column.Documents;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.search.query.SearchQuery;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.TermQuery;

/**
 * Finds questions and notices, who shows them loads them by their ids; and sets new entries apart,
 * to hold kept searches against them.
 */
@ApplicationScoped
public class TalkSearch {
  private static final Sort BEST =
      new Sort(
          SortField.FIELD_SCORE, new SortField(TalkDocuments.NUMBER, SortField.Type.LONG, true));

  private final TalkIndex index;
  private final SearchIndex reports;

  TalkSearch(TalkIndex index, SearchIndex reports) {
    this.index = index;
    this.reports = reports;
  }

  /** The caller closes what it gets. */
  public Newcomers newcomers(Collection<ReportSnapshot> found, Collection<TalkText> texts) {
    return Newcomers.of(reports, index, found, texts);
  }

  /** Ids of questions and notices that concern a search, the closest first. */
  public List<UUID> about(SearchQuery query, int most) {
    return index.read(
        (searcher, words) ->
            best(
                searcher,
                new TalkQuery(words, searcher.getIndexReader()).about(query, false),
                0,
                most));
  }

  /** Ids of those that resemble a text which is being typed, the closest first. */
  public List<UUID> similar(String text, int most) {
    return index.read(
        (searcher, words) ->
            best(searcher, new TalkQuery(words, searcher.getIndexReader()).similar(text), 0, most));
  }

  /**
   * Ids of those of one kind that hold every word, the best first.
   *
   * @param kind question or notice
   * @param unanswered only those without an answer
   */
  public List<UUID> find(EntryKind kind, String text, boolean unanswered, int from, int most) {
    return index.read(
        (searcher, words) -> {
          BooleanQuery.Builder query = new BooleanQuery.Builder();
          query.add(new TalkQuery(words, searcher.getIndexReader()).all(text), Occur.MUST);
          query.add(new TermQuery(new Term(TalkDocuments.KIND, kind.code())), Occur.FILTER);
          if (unanswered) {
            query.add(new TermQuery(new Term(TalkDocuments.ANSWERED, "no")), Occur.FILTER);
          }
          return best(searcher, query.build(), from, most);
        });
  }

  /** Makes entries findable at once on this node; call it after their transaction. */
  public void show(List<UUID> ids) {
    index.show(ids);
  }

  private static List<UUID> best(IndexSearcher searcher, Query query, int from, int most)
      throws IOException {
    ScoreDoc[] found = searcher.search(query, from + most, BEST).scoreDocs;
    List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
    List<UUID> ids = new ArrayList<>();
    for (int i = from; i < found.length; i++) {
      LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(found[i].doc, leaves));
      ids.add(Documents.id(leaf.reader(), found[i].doc - leaf.docBase));
    }
    return ids;
  }
}

package club.emberwell.search.talk;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.EntryKind;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Place;
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
import org.apache.lucene.search.FieldDoc;
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

  private static final Sort NEWEST =
      new Sort(new SortField(TalkDocuments.NUMBER, SortField.Type.LONG, true));

  private static final ListOrder CLOSEST = ListOrder.newestFirst("talk", Part.SIZE_MAX);

  private final TalkIndex index;
  private final SearchIndex reports;

  TalkSearch(TalkIndex index, SearchIndex reports) {
    this.index = index;
    this.reports = reports;
  }

  /**
   * What is looked for.
   *
   * @param kind question or notice
   * @param text every word of which must be there
   * @param unanswered only those without an answer
   */
  public record Wanted(EntryKind kind, String text, boolean unanswered) {}

  /** What was found, with its number in the order of writing. */
  public record Found(UUID id, long number) {}

  /** The caller closes what it gets. */
  public Newcomers newcomers(Collection<ReportSnapshot> found, Collection<TalkText> texts) {
    return Newcomers.of(reports, index, found, texts);
  }

  /** Ids of questions and notices that concern a search, the closest first. */
  public List<UUID> about(SearchQuery query, int most) {
    return index.read(
        (searcher, words) ->
            ids(
                searcher,
                new TalkQuery(words, searcher.getIndexReader()).about(query, false),
                most));
  }

  /** Ids of those that resemble a text which is being typed, the closest first. */
  public List<UUID> similar(String text, int most) {
    return index.read(
        (searcher, words) ->
            ids(searcher, new TalkQuery(words, searcher.getIndexReader()).similar(text), most));
  }

  /** Those of one kind that hold every word, the best first. */
  public List<Found> best(Wanted wanted, Place place) {
    return index.read(
        (searcher, words) -> found(searcher, query(searcher, words, wanted), BEST, null, place));
  }

  /** The same, those written last first. */
  public List<Found> newest(Wanted wanted, Place place) {
    FieldDoc after = new FieldDoc(Integer.MAX_VALUE, 0, new Object[] {place.number(0)});
    return index.read(
        (searcher, words) ->
            found(
                searcher,
                query(searcher, words, wanted),
                NEWEST,
                place.atBeginning() ? null : after,
                place));
  }

  private static Query query(IndexSearcher searcher, Vocabulary words, Wanted wanted)
      throws IOException {
    BooleanQuery.Builder query = new BooleanQuery.Builder();
    query.add(new TalkQuery(words, searcher.getIndexReader()).all(wanted.text()), Occur.MUST);
    query.add(new TermQuery(new Term(TalkDocuments.KIND, wanted.kind().code())), Occur.FILTER);
    if (wanted.unanswered()) {
      query.add(new TermQuery(new Term(TalkDocuments.ANSWERED, "no")), Occur.FILTER);
    }
    return query.build();
  }

  /** Makes entries findable at once on this node; call it after their transaction. */
  public void show(List<UUID> ids) {
    index.show(ids);
  }

  private static List<UUID> ids(IndexSearcher searcher, Query query, int most) throws IOException {
    return found(searcher, query, BEST, null, Place.first(CLOSEST, most)).stream()
        .map(Found::id)
        .toList();
  }

  private static List<Found> found(
      IndexSearcher searcher, Query query, Sort sort, FieldDoc after, Place place)
      throws IOException {
    ScoreDoc[] docs =
        searcher.searchAfter(after, query, place.from() + place.most(), sort).scoreDocs;
    List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
    List<Found> found = new ArrayList<>();
    for (int i = place.from(); i < docs.length; i++) {
      LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(docs[i].doc, leaves));
      Object[] keys = ((FieldDoc) docs[i]).fields;
      found.add(
          new Found(
              Documents.id(leaf.reader(), docs[i].doc - leaf.docBase),
              ((Number) keys[keys.length - 1]).longValue()));
    }
    return found;
  }
}

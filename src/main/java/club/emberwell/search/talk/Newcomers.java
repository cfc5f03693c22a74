package club.emberwell.search.talk;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.column.Documents;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.search.index.TrialDocuments;
import club.emberwell.search.match.QueryParts;
import club.emberwell.search.query.SearchQuery;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.UUID;
import org.apache.lucene.analysis.core.KeywordAnalyzer;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.MultiReader;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.store.ByteBuffersDirectory;

/**
 * A few new entries by themselves, against which many kept searches are held. What a search means
 * (beginnings, typos) is decided by the whole index, so that a watch finds what its search finds.
 */
public final class Newcomers implements Closeable {
  private final SearchIndex index;
  private final TalkIndex talk;
  private final DirectoryReader reports;
  private final DirectoryReader texts;

  private Newcomers(
      SearchIndex index, TalkIndex talk, DirectoryReader reports, DirectoryReader texts) {
    this.index = index;
    this.talk = talk;
    this.reports = reports;
    this.texts = texts;
  }

  static Newcomers of(
      SearchIndex index,
      TalkIndex talk,
      Collection<ReportSnapshot> reports,
      Collection<TalkText> texts) {
    Vocabulary words = index.vocabulary();
    TrialDocuments trials = new TrialDocuments(words);
    TalkDocuments talked = new TalkDocuments(words);
    return new Newcomers(
        index,
        talk,
        reader(
            writer -> {
              for (ReportSnapshot report : reports) {
                if (!report.trials().isEmpty()) {
                  writer.addDocuments(trials.of(report));
                }
              }
            }),
        reader(
            writer -> {
              for (TalkText text : texts) {
                writer.addDocument(talked.of(text));
              }
            }));
  }

  private interface Filling {
    void into(IndexWriter writer) throws IOException;
  }

  private static DirectoryReader reader(Filling filling) {
    ByteBuffersDirectory memory = new ByteBuffersDirectory();
    try (IndexWriter writer =
        new IndexWriter(memory, new IndexWriterConfig(new KeywordAnalyzer()))) {
      filling.into(writer);
      writer.commit();
      return DirectoryReader.open(memory);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Ids of the new reports, questions and notices that a search finds. */
  public Set<UUID> matching(SearchQuery query) {
    Vocabulary words = index.vocabulary();
    Query forReports =
        index.read(
            searcher ->
                QueryParts.of(query, words, both(searcher.getIndexReader(), reports)).matching());
    Query forTexts =
        query.isEverything()
            ? new MatchAllDocsQuery()
            : talk.read(
                (searcher, now) ->
                    new TalkQuery(now, both(searcher.getIndexReader(), texts)).about(query, true));
    Set<UUID> found = new LinkedHashSet<>();
    collect(reports, forReports, found);
    collect(texts, forTexts, found);
    return found;
  }

  /** Which words there are is asked of both: a newcomer may not have reached the index yet. */
  private static IndexReader both(IndexReader all, IndexReader fresh) throws IOException {
    return new MultiReader(new IndexReader[] {all, fresh}, false);
  }

  private static void collect(DirectoryReader reader, Query query, Set<UUID> found) {
    try {
      Documents.matching(
          new IndexSearcher(reader),
          query,
          (leaf, documents) -> {
            for (int document : documents) {
              found.add(Documents.id(leaf, document));
            }
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    try {
      reports.close();
      texts.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package club.emberwell.search.index;

import club.emberwell.search.column.Columns;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.lucene.analysis.core.KeywordAnalyzer;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.CodecReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.IndexWriterConfig.OpenMode;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.SearcherFactory;
import org.apache.lucene.search.SearcherManager;
import org.apache.lucene.store.AlreadyClosedException;
import org.apache.lucene.store.Directory;

/** One index on disk with its writer and its readers. Written by one thread, read by many. */
public final class Generation implements Closeable {
  private static final double BUFFER_MB = 32;

  private final Directory directory;
  private final IndexWriter writer;
  private final SearcherManager searchers;
  private volatile IndexStamp stamp;
  private volatile boolean closed;

  private Generation(Directory directory, OpenMode mode, IndexStamp fresh) throws IOException {
    this.directory = directory;
    IndexWriterConfig config = new IndexWriterConfig(new KeywordAnalyzer());
    config.setOpenMode(mode).setRAMBufferSizeMB(BUFFER_MB).setCommitOnClose(false);
    this.writer = new IndexWriter(directory, config);
    try {
      this.stamp = fresh == null ? IndexStamp.of(userData(writer)) : fresh;
      this.searchers = new SearcherManager(writer, new SearcherFactory());
    } catch (IOException | RuntimeException e) {
      writer.rollback();
      throw e;
    }
  }

  /** A new empty index; nothing that was in the directory stays. */
  public static Generation create(Directory directory, IndexStamp stamp) throws IOException {
    return new Generation(directory, OpenMode.CREATE, stamp);
  }

  /**
   * An index as its last commit left it, with every file's checksum compared.
   *
   * @throws IOException where it is missing, damaged, locked or of another schema
   */
  static Generation open(Directory directory) throws IOException {
    try {
      Generation opened = new Generation(directory, OpenMode.APPEND, null);
      try {
        opened.checkIntegrity();
        return opened;
      } catch (IOException | RuntimeException e) {
        opened.close();
        throw e;
      }
    } catch (RuntimeException e) {
      throw new IOException("not an index of this version", e);
    }
  }

  private static Map<String, String> userData(IndexWriter writer) {
    Map<String, String> data = new HashMap<>();
    Iterable<Map.Entry<String, String>> entries = writer.getLiveCommitData();
    if (entries != null) {
      entries.forEach(entry -> data.put(entry.getKey(), entry.getValue()));
    }
    return data;
  }

  private void checkIntegrity() throws IOException {
    IndexSearcher searcher = searchers.acquire();
    try {
      for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
        if (leaf.reader() instanceof CodecReader reader) {
          reader.checkIntegrity();
        }
      }
    } finally {
      searchers.release(searcher);
    }
  }

  public IndexStamp stamp() {
    return stamp;
  }

  /** False once the writer gave up after an error of the disk. */
  boolean isOpen() {
    return !closed && writer.isOpen();
  }

  /** Replaces the documents of an entry; none removes it. */
  public void put(UUID id, List<Document> documents) {
    Term term = new Term(Columns.ID, id.toString());
    written(
        documents.isEmpty()
            ? () -> writer.deleteDocuments(term)
            : () -> writer.updateDocuments(term, documents));
  }

  public void clear() {
    written(writer::deleteAll);
  }

  private interface Writing {
    void run() throws IOException;
  }

  private static void written(Writing writing) {
    try {
      writing.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Lets new searches see everything written so far. */
  public void refresh() {
    written(searchers::maybeRefreshBlocking);
  }

  /** Everything written belongs to this place in the change rows. */
  public void reached(IndexStamp newer) {
    stamp = newer;
  }

  /** Makes everything written so far durable, together with the stamp. */
  void commit() {
    writer.setLiveCommitData(stamp.toUserData().entrySet());
    written(writer::commit);
  }

  /** What a read of the index answers. */
  public interface Read<T> {
    T from(IndexSearcher searcher) throws IOException;
  }

  /**
   * Reads one state of the index.
   *
   * @throws AlreadyClosedException where a newer generation has taken over
   */
  public <T> T read(Read<T> read) throws IOException {
    IndexSearcher searcher = searchers.acquire();
    try {
      return read.from(searcher);
    } finally {
      searchers.release(searcher);
    }
  }

  /** Uncommitted writes are dropped: the change rows bring them again. */
  @Override
  public void close() {
    closed = true;
    written(
        () -> {
          try (directory) {
            searchers.close();
            writer.rollback();
          }
        });
  }
}

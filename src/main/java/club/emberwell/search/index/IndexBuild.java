package club.emberwell.search.index;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.search.query.SearchLimits;
import java.io.IOException;
import java.util.Iterator;
import java.util.function.BooleanSupplier;
import org.jboss.logging.Logger;

/** Builds a whole index beside the one in use. */
public final class IndexBuild {
  private static final Logger LOG = Logger.getLogger(IndexBuild.class);

  private IndexBuild() {}

  /**
   * A committed index of everything live. Changes made meanwhile lie behind its position and are
   * replayed by whoever follows.
   */
  public static Generation run(
      IndexFolder folder,
      ChangeLog log,
      ReportSource source,
      Vocabulary vocabulary,
      BooleanSupplier stopped)
      throws IOException {
    long start = System.nanoTime();
    IndexStamp stamp = new IndexStamp(log.head(), vocabulary.contentHash());
    Generation made = folder.create(stamp);
    try {
      long reports = fill(made, source, new TrialDocuments(vocabulary), stopped);
      made.commit();
      made.refresh();
      LOG.infof(
          "Built the search index of %d reports in %.1f s",
          reports, (System.nanoTime() - start) / 1e9);
      return made;
    } catch (IOException | RuntimeException e) {
      made.close();
      throw e;
    }
  }

  private static long fill(
      Generation made, ReportSource source, TrialDocuments documents, BooleanSupplier stopped)
      throws IOException {
    long count = 0;
    for (Iterator<ReportSnapshot> all = source.live(SearchLimits.BATCH).iterator();
        all.hasNext();
        count++) {
      ReportSnapshot report = all.next();
      made.put(report.id(), documents.of(report));
      if (stopped.getAsBoolean()) {
        throw new IOException("stopped while the index was being built");
      }
    }
    return count;
  }
}

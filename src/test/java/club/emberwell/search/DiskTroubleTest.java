package club.emberwell.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.search.query.SearchQuery;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.FilterDirectory;
import org.apache.lucene.store.IOContext;
import org.apache.lucene.store.IndexOutput;
import org.apache.lucene.store.MMapDirectory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that is full for a while. The writer closes itself for good on such an error. */
class DiskTroubleTest {
  @TempDir Path folder;
  private final AtomicBoolean full = new AtomicBoolean();
  private final AtomicInteger refused = new AtomicInteger();

  private Directory opener(Path path) throws IOException {
    return new FilterDirectory(new MMapDirectory(path)) {
      @Override
      public IndexOutput createOutput(String name, IOContext context) throws IOException {
        if (full.get()) {
          refused.incrementAndGet();
          throw new IOException("No space left on device (meant to happen in this test)");
        }
        return super.createOutput(name, context);
      }
    };
  }

  @Test
  void afterAFullDiskTheIndexOpensAtItsLastCommitAndLosesNothing() throws InterruptedException {
    FakeClub club = new FakeClub();
    InventedReports invented = new InventedReports(5);
    club.save(invented.many(30));
    try (SearchFixture fixture = new SearchFixture(club, folder, this::opener).settled()) {
      full.set(true);
      club.save(invented.many(10));
      SearchFixture.eventually(() -> refused.get() > 0);
      assertTrue(!fixture.index.status().ready() || fixture.search("").totalReports() == 30);
      full.set(false);
      fixture.settled();
      assertEquals(40, fixture.search(SearchQuery.everything()).totalReports());
    }
  }
}

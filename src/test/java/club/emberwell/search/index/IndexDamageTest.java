package club.emberwell.search.index;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.apache.lucene.analysis.core.KeywordAnalyzer;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.StringField;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.store.FSDirectory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the library itself throws over files that are cut, gone or let go. */
class IndexDamageTest {
  private static final int CUT = 20;

  @TempDir Path folder;

  private void write() throws IOException {
    try (FSDirectory files = FSDirectory.open(folder);
        IndexWriter writer = new IndexWriter(files, new IndexWriterConfig(new KeywordAnalyzer()))) {
      for (int i = 0; i < 100; i++) {
        Document each = new Document();
        each.add(new StringField("id", Integer.toString(i), Field.Store.YES));
        writer.addDocument(each);
      }
    }
  }

  private List<Path> segments() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().matches(".*\\.(cfs|fdt|tim)")).toList();
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void filesThatAreCutOrGone(boolean gone) throws IOException {
    write();
    for (Path each : segments()) {
      if (gone) {
        Files.delete(each);
      } else {
        try (FileChannel file = FileChannel.open(each, StandardOpenOption.WRITE)) {
          file.truncate(CUT);
        }
      }
    }
    Throwable thrown = assertThrows(IOException.class, this::open);
    assertTrue(IndexDamage.is(thrown), thrown.toString());
    assertTrue(IndexDamage.is(new IllegalStateException(thrown)));
  }

  private DirectoryReader open() throws IOException {
    return DirectoryReader.open(FSDirectory.open(folder));
  }

  @Test
  void aReaderThatWasLetGo() throws IOException {
    write();
    DirectoryReader reader = open();
    reader.close();
    assertTrue(IndexDamage.is(assertThrows(RuntimeException.class, reader::storedFields)));
  }

  @Test
  void faultsOfOthersAreNone() {
    assertFalse(IndexDamage.is(new IllegalStateException("ours")));
    assertFalse(IndexDamage.is(new IndexOutOfBoundsException(3)));
    assertFalse(IndexDamage.is(new UncheckedIOException(new NoSuchFileException("photo"))));
  }
}

package club.emberwell.search.index;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.store.FSDirectory;

/** The index as its node last committed it, read beside the node or without it. */
public final class StoredIndex {
  private StoredIndex() {}

  /**
   * What the newest generation below a folder holds; empty where none has a commit.
   *
   * @throws IOException where it is damaged
   */
  public static Optional<IndexHash> in(Path root) throws IOException {
    IndexFolder folder = new IndexFolder(root, FSDirectory::open);
    for (Path generation : folder.generations()) {
      try (FSDirectory directory = FSDirectory.open(generation)) {
        if (DirectoryReader.indexExists(directory)) {
          try (DirectoryReader reader = DirectoryReader.open(directory)) {
            return Optional.of(IndexHash.of(new IndexSearcher(reader)));
          }
        }
      }
    }
    return Optional.empty();
  }
}

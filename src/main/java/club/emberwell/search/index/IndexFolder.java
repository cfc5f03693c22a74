package club.emberwell.search.index;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.lucene.store.Directory;
import org.jboss.logging.Logger;

/**
 * The folder that holds this node's generations, {@code g-1}, {@code g-2}, …: the newest one with a
 * commit is the index, all others are left-overs.
 */
public final class IndexFolder {
  private static final Logger LOG = Logger.getLogger(IndexFolder.class);
  private static final String PREFIX = "g-";

  /** Opens a directory; tests put a failing one here. */
  public interface Opener {
    Directory open(Path folder) throws IOException;
  }

  private final Path root;
  private final Opener opener;

  public IndexFolder(Path root, Opener opener) {
    this.root = root;
    this.opener = opener;
  }

  /** The newest generation that opens; empty where a new one must be built. */
  Optional<Generation> openNewest() {
    for (Path folder : generations()) {
      try {
        return Optional.of(Generation.open(opener.open(folder)));
      } catch (IOException e) {
        LOG.warnf("The search index in %s cannot be used (%s)", folder, e.getMessage());
      }
    }
    return Optional.empty();
  }

  /** A new empty generation beside the others. */
  Generation create(IndexStamp stamp) throws IOException {
    long newest = generations().stream().mapToLong(IndexFolder::number).max().orElse(0);
    Path folder = Files.createDirectories(root.resolve(PREFIX + (newest + 1)));
    return Generation.create(opener.open(folder), stamp);
  }

  /** Deletes all generations but the newest. */
  void deleteOld() {
    generations().stream().skip(1).forEach(IndexFolder::delete);
  }

  /** Newest first. */
  List<Path> generations() {
    if (!Files.isDirectory(root)) {
      return List.of();
    }
    try (Stream<Path> children = Files.list(root)) {
      return children
          .filter(child -> child.getFileName().toString().matches(PREFIX + "\\d{1,18}"))
          .sorted(Comparator.comparingLong(IndexFolder::number).reversed())
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static long number(Path folder) {
    return Long.parseLong(folder.getFileName().toString().substring(PREFIX.length()));
  }

  private static void delete(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    } catch (IOException | UncheckedIOException e) {
      LOG.warnf("An old search index stays in %s (%s)", folder, e.getMessage());
    }
  }
}

package club.emberwell.frozen;

import com.github.difflib.DiffUtils;
import com.github.difflib.UnifiedDiffUtils;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;

/** The files that hold what was seen when they were written. */
final class Golden {
  private static final boolean UPDATE = Boolean.getBoolean("frozen.update");
  private static final int SURROUNDING = 3;

  private final Path folder;

  Golden(String folder) {
    this.folder = Path.of(folder);
  }

  /** Compares, or writes the file anew where that was asked for. */
  void hold(String name, String seen) {
    Path file = folder.resolve(name);
    try {
      if (UPDATE) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, seen);
        return;
      }
      String kept = Files.exists(file) ? Files.readString(file) : "";
      if (!kept.equals(seen)) {
        Assertions.fail(difference(file.toString(), kept, seen));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String difference(String name, String kept, String seen) {
    List<String> before = kept.lines().toList();
    return "What a stranger sees is no longer what "
        + name
        + " holds. Decide whether it should be; -Dfrozen.update=true writes it anew.\n"
        + String.join(
            "\n",
            UnifiedDiffUtils.generateUnifiedDiff(
                "frozen",
                "seen",
                before,
                DiffUtils.diff(before, seen.lines().toList()),
                SURROUNDING));
  }

  /** Files of a folder that no step writes any more. */
  void nothingElseIn(String part, Set<String> written) {
    try (Stream<Path> files = Files.list(folder.resolve(part))) {
      Set<String> more =
          files
              .map(file -> part + file.getFileName())
              .filter(name -> !written.contains(name))
              .collect(Collectors.toCollection(TreeSet::new));
      for (String name : UPDATE ? more : Set.<String>of()) {
        Files.delete(folder.resolve(name));
      }
      Assertions.assertTrue(UPDATE || more.isEmpty(), () -> "no step writes " + more);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

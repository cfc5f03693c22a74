package club.emberwell;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whoever opens a package is told what it is for and where to begin. */
class PackagesTest {
  private static final Path SOURCES = Path.of("src/main/java");

  static List<Path> packages() throws IOException {
    try (Stream<Path> files = Files.walk(SOURCES)) {
      return files
          .filter(file -> file.toString().endsWith(".java"))
          .map(Path::getParent)
          .distinct()
          .sorted()
          .toList();
    }
  }

  @ParameterizedTest
  @MethodSource("packages")
  void eachPackageSaysWhatItIsForAndNamesItsEntryPoints(Path folder) throws IOException {
    Path info = folder.resolve("package-info.java");
    assertTrue(Files.exists(info), () -> folder + " has no package-info.java");
    Set<String> words = new HashSet<>(List.of(Files.readString(info).split("\\W+")));
    assertTrue(types(folder).anyMatch(words::contains), () -> info + " names none of its types");
  }

  private static Stream<String> types(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString().replace(".java", ""))
          .toList()
          .stream();
    }
  }
}

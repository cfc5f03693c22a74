package club.emberwell;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A guide that names what is gone leads astray. */
class GuideTest {
  /** In backticks: a type of ours, with or without its package before it and a member after it. */
  private static final Pattern TYPE = Pattern.compile("`(?:[a-z]+\\.)*([A-Z][a-z]\\w*)[.\\w]*`");

  /** Ends of names. */
  private static final Set<String> HALVES = Set.of("Limits");

  @Test
  void everyTypeTheGuideNamesIsThere() throws IOException {
    Set<String> named =
        TYPE.matcher(Files.readString(Path.of("DEVELOPERS.md")))
            .results()
            .map(found -> found.group(1))
            .collect(Collectors.toCollection(TreeSet::new));
    named.removeAll(types());
    named.removeAll(HALVES);
    assertEquals(Set.of(), named);
  }

  private static Set<String> types() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src"))) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".java"))
          .map(name -> name.replace(".java", ""))
          .collect(Collectors.toSet());
    }
  }
}

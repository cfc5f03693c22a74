package club.emberwell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The table that holds the program against OWASP's standard says nothing that is not there. */
class AsvsTest {
  private static final String TABLE = "deploy/ASVS.csv";
  private static final Path PAGE = Path.of("deploy/ASVS.md");
  private static final Path STANDARD = Path.of("src/test/resources/reference/asvs-5.0.0.csv");
  private static final List<String> STATUSES =
      List.of("met", "partly", "not met", "does not apply");

  /**
   * Id, level and status of a line; the requirement before the status has no comma but in quotes.
   */
  private static final Pattern ROW =
      Pattern.compile("(V[\\d.]+),([12]),(?:\"[^\"]*\"|[^\",]*),([a-z ]+),.*");

  private static final Pattern ID = Pattern.compile("V\\d+\\.\\d+\\.\\d+");

  private static List<MatchResult> rows() throws IOException {
    return Files.readAllLines(Path.of(TABLE)).stream()
        .skip(1)
        .map(
            line -> {
              var row = ROW.matcher(line);
              assertTrue(row.matches(), line);
              return row.toMatchResult();
            })
        .toList();
  }

  @Test
  void everyRequirementOfTheFirstTwoLevelsHasItsLine() throws IOException {
    List<String> standard =
        Files.readAllLines(STANDARD).stream().filter(line -> !line.startsWith("#")).toList();
    assertEquals(standard, rows().stream().map(row -> row.group(1) + "," + row.group(2)).toList());
  }

  @ParameterizedTest
  @CsvFileSource(files = TABLE, numLinesToSkip = 1)
  void whatALineNamesIsThere(
      String id, int level, String words, String status, String where, String test, String note)
      throws IOException {
    assertTrue(STATUSES.contains(status), status);
    assertNotNull(words);
    boolean reached = status.equals("met") || status.equals("partly");
    assertTrue(!reached || where != null && test != null, "where is it met, and what shows it?");
    assertTrue(status.equals("met") || note != null, "why?");
    for (String place : parts(where)) {
      assertTrue(isThere(place), place);
    }
    for (String each : parts(test)) {
      assertTrue(tests(each), each);
    }
  }

  private static List<String> parts(String list) {
    return list == null ? List.of() : List.of(list.split("; "));
  }

  private static boolean isThere(String place) throws IOException {
    return place.contains("/") || place.contains(".")
        ? Files.exists(Path.of(place))
        : find("src/main/java", place) != null;
  }

  /** Whether there is this test class, with this test if one is named. */
  private static boolean tests(String name) throws IOException {
    String[] parts = name.split("\\.");
    Path file = find("src/test/java", parts[0]);
    return file != null
        && (parts.length == 1
            || Pattern.compile("@(?:Parameterized)?Test.*\\s" + parts[1] + "\\(", Pattern.DOTALL)
                .matcher(Files.readString(file))
                .find());
  }

  private static Path find(String root, String type) throws IOException {
    try (Stream<Path> files = Files.walk(Path.of(root))) {
      return files
          .filter(file -> file.getFileName().toString().equals(type + ".java"))
          .findFirst()
          .orElse(null);
    }
  }

  @Test
  void thePageCountsWhatTheTableSays() throws IOException {
    Map<String, Long> counts =
        rows().stream()
            .collect(
                Collectors.groupingBy(
                    row -> row.group(3) + " " + row.group(2), TreeMap::new, Collectors.counting()));
    String page = Files.readString(PAGE);
    for (String status : STATUSES) {
      long first = counts.getOrDefault(status + " 1", 0L);
      long second = counts.getOrDefault(status + " 2", 0L);
      String line = "| %s | %d | %d | %d |".formatted(status, first, second, first + second);
      assertTrue(page.contains(line), line);
    }
  }

  @Test
  void thePageNamesAllThatIsMetPartlyOrNot() throws IOException {
    TreeSet<String> open =
        rows().stream()
            .filter(row -> row.group(3).equals("partly") || row.group(3).equals("not met"))
            .map(row -> row.group(1))
            .collect(Collectors.toCollection(TreeSet::new));
    TreeSet<String> named =
        ID.matcher(Files.readString(PAGE))
            .results()
            .map(MatchResult::group)
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(open, named);
  }
}

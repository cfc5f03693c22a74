package club.emberwell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What people read (templates, labels, sentences in the program, cautions) holds none of the
 * puzzles of {@code plain-words.txt}.
 */
class PlainWordsTest {
  private static final Path SOURCE = Path.of("src/main/java");
  private static final Path TEMPLATES = Path.of("src/main/resources/templates");
  private static final Path CAUTIONS = Path.of("shared/hazards/rules.yaml");

  /** A text, or text block, of the program; texts glued over lines are one. */
  private static final Pattern TEXT =
      Pattern.compile("\"\"\"(.*?)\"\"\"|\"((?:[^\"\\\\\n]|\\\\.)*)\"", Pattern.DOTALL);

  private static final Pattern GLUE = Pattern.compile("\"\\s*\\n\\s*\\+ \"");
  private static final Pattern COMMENT =
      Pattern.compile("/\\*.*?\\*/|(?m)^\\s*//[^\n]*", Pattern.DOTALL);
  private static final Pattern NO_WORDS =
      Pattern.compile(
          "\\{!.*?!}|<svg.*?</svg>|(class|id|href|for|name|action|value)=\"[^\"]*\"",
          Pattern.DOTALL);

  /** Programs read codes of UCUM; these say so or read what people type. */
  private static final List<String> FOR_PROGRAMS =
      List.of("/api/", "/quantity/", "/exchange/", "/launch/", "/search/index/", "OpenApi");

  private record Puzzle(Pattern pattern, String instead) {}

  @Test
  void noPageSaysAPuzzle() throws IOException {
    List<String> found = new ArrayList<>();
    for (Path file : files(TEMPLATES, ".html")) {
      String text = NO_WORDS.matcher(Files.readString(file)).replaceAll(" ");
      look(file, List.of(text.replaceAll("<[^>]*?>", "\n").split("\n")), found);
    }
    look(
        CAUTIONS,
        Files.readAllLines(CAUTIONS).stream()
            .filter(line -> !line.startsWith("#") && !line.contains("value: "))
            .toList(),
        found);
    assertEquals(List.of(), found);
  }

  @Test
  void noLabelAndNoSentenceOfTheProgramIsAPuzzle() throws IOException {
    List<String> found = new ArrayList<>();
    for (Path file : files(SOURCE, ".java")) {
      if (FOR_PROGRAMS.stream().noneMatch(file.toString()::contains)) {
        look(file, texts(Files.readString(file)), found);
      }
    }
    assertEquals(List.of(), found);
  }

  @Test
  void aPuzzleWouldBeFound() throws IOException {
    List<String> found = new ArrayList<>();
    look(Path.of("x"), texts("say(\"Take it \"\n + \"away\");"), found);
    look(Path.of("y"), List.of("80 um", "Light comes"), found);
    assertEquals(3, found.size());
    assertTrue(found.get(0).endsWith("=> remove"), found.get(0));
  }

  private static void look(Path file, List<String> texts, List<String> found) throws IOException {
    List<Puzzle> puzzles = puzzles();
    for (String text : texts) {
      for (Puzzle puzzle : puzzles) {
        Matcher matcher = puzzle.pattern().matcher(text.strip().toLowerCase(Locale.ROOT));
        if (matcher.find()) {
          found.add(file + ": \"" + text.strip() + "\" => " + puzzle.instead());
        }
      }
    }
  }

  private static List<String> texts(String java) {
    List<String> texts = new ArrayList<>();
    String code = GLUE.matcher(COMMENT.matcher(java).replaceAll("")).replaceAll("");
    Matcher matcher = TEXT.matcher(code);
    while (matcher.find()) {
      texts.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
    }
    return texts;
  }

  private static List<Puzzle> puzzles() throws IOException {
    return Files.readAllLines(Path.of("src/test/resources/plain-words.txt")).stream()
        .filter(line -> !line.startsWith("#"))
        .map(line -> line.split(" => ", 2))
        .map(
            parts ->
                new Puzzle(Pattern.compile("\\b(?:" + parts[0] + ")(?![\\p{L}\\p{N}])"), parts[1]))
        .toList();
  }

  private static List<Path> files(Path below, String ending) {
    try (Stream<Path> all = Files.walk(below)) {
      return all.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

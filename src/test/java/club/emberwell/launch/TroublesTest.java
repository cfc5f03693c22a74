package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.problem.ProblemKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the page about troubles quotes and names is what the program says and has. */
class TroublesTest {
  private static final Path PAGE = Path.of("deploy/TROUBLES.md");

  /** Ours; those of other programs stand in commands. */
  private static final Pattern SETTING = Pattern.compile("\\bEMBERWELL_[A-Z_]+\\b");

  private static final Pattern VERB = Pattern.compile("`emberwell ([a-z][a-z-]*)");
  private static final Pattern PROBLEM = Pattern.compile("`/problems/([a-z-]+)`");
  private static final Pattern EXIT = Pattern.compile("\\bExit (\\d+)");
  private static final Pattern PAGE_OF_OURS = Pattern.compile("`(/(?:desk|first-owner)[a-z/-]*)`");
  private static final Pattern EVENT = Pattern.compile("event=([a-z-]+)");
  private static final Pattern CHECK = Pattern.compile("(?:check|checks?,?) \"([a-z ]+)\"");
  private static final Pattern ROW =
      Pattern.compile("rows? \"([a-zA-Z ]+)\"(?: and \"([a-z ]+)\")?");

  private static List<String> all(Pattern pattern) throws IOException {
    return pattern.matcher(Files.readString(PAGE)).results().map(m -> m.group(1)).toList();
  }

  /** All texts of the program, those that are written in pieces as one. */
  private static String program() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main"))) {
      return files
          .filter(file -> file.toString().matches(".*\\.(java|html)"))
          .map(TroublesTest::read)
          .map(text -> text.replaceAll("\"\\s*\\+\\s*\"", ""))
          .collect(Collectors.joining("\n"));
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void everyQuoteIsWhatTheProgramSays() throws IOException {
    String program = program();
    List<String> quotes =
        Files.readAllLines(PAGE).stream().filter(line -> line.startsWith("> ")).toList();
    assertTrue(quotes.size() > 30, "quotes: " + quotes.size());
    for (String quote : quotes) {
      for (String piece : quote.substring(2).split("…")) {
        assertTrue(program.contains(piece.strip()), quote + " has \"" + piece + "\"");
      }
    }
  }

  @Test
  void everySettingVerbExitCodeAndProblemIsThere() throws IOException {
    Settings known = Settings.known();
    List<String> settings =
        SETTING.matcher(Files.readString(PAGE)).results().map(MatchResult::group).toList();
    for (String setting : settings) {
      assertTrue(known.hasVariable(setting), setting);
    }
    Set<String> verbs = Main.commandLine(Map.of()).getSubcommands().keySet();
    assertTrue(verbs.containsAll(all(VERB)), all(VERB) + " in " + verbs);
    List<String> problems = Arrays.stream(ProblemKind.values()).map(ProblemKind::code).toList();
    assertTrue(problems.containsAll(all(PROBLEM)), "" + all(PROBLEM));
    Set<String> refusals =
        Arrays.stream(ExitCode.values())
            .map(code -> Integer.toString(code.number()))
            .collect(Collectors.toSet());
    assertTrue(refusals.containsAll(all(EXIT)), "" + all(EXIT));
  }

  @Test
  void everyPageEventCheckAndRowIsThere() throws IOException {
    String routes = read(Path.of("src/test/resources/route-matrix.csv"));
    for (String path : all(PAGE_OF_OURS)) {
      assertTrue(routes.contains("\n" + path + ";GET;"), path);
    }
    String program = program();
    TreeSet<String> named = new TreeSet<>(all(CHECK));
    ROW.matcher(read(PAGE))
        .results()
        .flatMap(row -> Stream.of(row.group(1), row.group(2)))
        .filter(name -> name != null)
        .forEach(named::add);
    assertTrue(named.size() > 6, "" + named);
    for (String name : named) {
      assertTrue(program.contains("\"" + name + "\""), name);
    }
    for (String event : all(EVENT)) {
      boolean signIn = program.contains(event.toUpperCase().replace('-', '_') + "(\"");
      assertTrue(signIn || program.contains("event=" + event + " "), event);
    }
  }

  /** Whoever is in trouble finds it: seen, looked at, done, in this order. */
  @Test
  void eachTroubleSaysWhatIsSeenWhatTellsAndWhatToDo() throws IOException {
    String[] troubles = Files.readString(PAGE).split("\n## \\d+\\. ");
    assertEquals(13, troubles.length);
    for (String trouble : Arrays.asList(troubles).subList(1, troubles.length)) {
      String words = trouble.replaceAll("\\s+", " ");
      int seen = words.toLowerCase().indexOf("you see");
      int look = words.indexOf("Look: ");
      int done = words.indexOf("Do: ");
      assertTrue(seen >= 0 && seen < look && look < done, words.substring(0, 40));
    }
    for (String from : List.of("README.md", "deploy/README.md")) {
      assertTrue(read(Path.of(from)).contains("TROUBLES.md)"), from);
    }
  }
}

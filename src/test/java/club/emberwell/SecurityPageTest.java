package club.emberwell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Properties;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What is decided about security is what the program does. */
class SecurityPageTest {
  private static final Path PAGE = Path.of("deploy/SECURITY.md");
  private static final Path SETTINGS = Path.of("src/main/resources/application.properties");
  private static final Path WORDS =
      Path.of("src/main/java/club/emberwell/member/session/PasswordRules.java");

  /** A line of the table of limits: its value, and the setting or constant it is. */
  private static final Pattern LIMIT =
      Pattern.compile("\\| [^|]+ \\| ([^|]+) \\| `([\\w-]+(?:\\.[\\w-]+)+)` \\|");

  private static final Pattern MAPPING =
      Pattern.compile("@ConfigMapping\\(prefix = \"([^\"]+)\"\\)");
  private static final Pattern DEFAULT =
      Pattern.compile("@WithDefault\\(\"([^\"]*)\"\\)[^;]*?(\\w+)\\(\\);");
  private static final Pattern CONSTANT = Pattern.compile("static final \\w+ (\\w+) = (\\d+);");

  /** Every default of a setting, and every number that is a constant of a type of limits. */
  private static TreeMap<String, String> limits() throws IOException {
    TreeMap<String, String> limits = new TreeMap<>();
    Properties settings = new Properties();
    try (Reader reader = Files.newBufferedReader(SETTINGS)) {
      settings.load(reader);
    }
    settings.forEach((name, value) -> limits.put((String) name, (String) value));
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(each -> each.toString().endsWith(".java")).toList()) {
        read(file, limits);
      }
    }
    return limits;
  }

  private static void read(Path file, TreeMap<String, String> limits) throws IOException {
    String source = Files.readString(file);
    var mapping = MAPPING.matcher(source);
    if (mapping.find()) {
      String prefix = mapping.group(1) + ".";
      DEFAULT
          .matcher(source)
          .results()
          .forEach(found -> limits.put(prefix + dashed(found.group(2)), found.group(1)));
    }
    String type = file.getFileName().toString().replace(".java", "");
    if (type.endsWith("Limits")) {
      CONSTANT
          .matcher(source)
          .results()
          .forEach(found -> limits.put(type + "." + found.group(1), found.group(2)));
    }
  }

  private static String dashed(String name) {
    return name.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
  }

  @Test
  void theLimitsAreThoseOfTheProgram() throws IOException {
    TreeMap<String, String> told = new TreeMap<>();
    LIMIT
        .matcher(Files.readString(PAGE))
        .results()
        .forEach(found -> told.put(found.group(2), found.group(1)));
    assertTrue(told.size() > 20, told::toString);
    TreeMap<String, String> real = limits();
    real.keySet().retainAll(told.keySet());
    assertEquals(real, told);
  }

  @Test
  void theWordsThatMakeNoPasswordAreThoseOfTheProgram() throws IOException {
    String source = Files.readString(WORDS);
    int from = source.indexOf("SITE_WORDS");
    String words =
        Pattern.compile("\"(\\w+)\"")
            .matcher(source.substring(from, source.indexOf(';', from)))
            .results()
            .map((MatchResult found) -> "`" + found.group(1) + "`")
            .collect(Collectors.joining(", "));
    String page = Files.readString(PAGE).replaceAll("\\s+", " ");
    assertTrue(page.contains("nor made of " + words + " or"), words);
  }
}

package club.emberwell.launch;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What the operator has set, before the application reads its configuration: a system property wins
 * over an environment variable, that over a file named by {@code …_FILE}, that over {@code
 * emberwell.properties} in the home.
 */
final class Given {
  /** The settings that may stand in a file of their own, named by the variable {@code …_FILE}. */
  static final List<String> FROM_FILES =
      List.of(
          "emberwell.database.url",
          "emberwell.database.user",
          "emberwell.database.password",
          "emberwell.mail.password",
          "emberwell.sso.client-secret");

  private static final String FILE = "emberwell.properties";
  private static final String IN_FILE = "_FILE";

  private final Map<String, String> environment;
  private final Properties file = new Properties();
  private String filePath = FILE;

  /** What somebody gave, and where: as the subject of a sentence. */
  record Said(String where, String value) {}

  Given(Map<String, String> environment) {
    this.environment = Map.copyOf(environment);
  }

  /** Reads {@code emberwell.properties}, where the home has one. */
  void readHome(Path home) {
    Path path = home.resolve(FILE);
    if (!Files.exists(path)) {
      return;
    }
    filePath = path.toString();
    try (Reader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
      file.load(reader);
    } catch (IOException | IllegalArgumentException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING, path + " cannot be read: " + e.getMessage() + ".", e);
    }
  }

  /** The value an operator gave, if any. */
  Optional<String> value(String name) {
    return said(name).findFirst().map(Said::value).map(String::trim).filter(t -> !t.isEmpty());
  }

  /** Everything an operator gave for a setting; the first of it counts. */
  Stream<Said> said(String name) {
    String variable = variable(name);
    Stream.Builder<Said> all = Stream.builder();
    if (System.getProperty(name) != null) {
      all.add(new Said("-D" + name, System.getProperty(name)));
    }
    if (environment.containsKey(variable)) {
      all.add(new Said(variable, environment.get(variable)));
    }
    if (FROM_FILES.contains(name) && environment.containsKey(variable + IN_FILE)) {
      all.add(new Said(variable + IN_FILE, contentOf(variable + IN_FILE)));
    }
    if (file.containsKey(name)) {
      all.add(new Said(name + " in " + filePath, file.getProperty(name)));
    }
    return all.build();
  }

  /** The environment variables that look like settings. */
  Stream<String> variables() {
    return environment.keySet().stream().filter(name -> variable(name).startsWith("EMBERWELL_"));
  }

  /** What stands in the file of the home. */
  Set<String> namesInFile() {
    return file.stringPropertyNames();
  }

  /** The path of that file. */
  String filePath() {
    return filePath;
  }

  Map<String, String> environment() {
    return environment;
  }

  /** The value an operator gave or the one of {@code application.properties}. */
  String valueOrDefault(String name) {
    return value(name)
        .orElseGet(
            () ->
                defaults()
                    .getProperty(name)
                    .replace("${user.home}", System.getProperty("user.home")));
  }

  /** Hands what stands in files to the application, which reads only properties and variables. */
  void publish() {
    for (String name : FROM_FILES) {
      if (environment.containsKey(variable(name) + IN_FILE)) {
        value(name).ifPresent(value -> System.setProperty(name, value));
      }
    }
    for (String name : file.stringPropertyNames()) {
      if (System.getProperty(name) == null && !environment.containsKey(variable(name))) {
        System.setProperty(name, file.getProperty(name));
      }
    }
  }

  static String variable(String name) {
    return name.replaceAll("[^A-Za-z0-9]", "_").toUpperCase(Locale.ROOT);
  }

  private String contentOf(String variable) {
    String path = environment.get(variable);
    try {
      return Files.readString(Path.of(path), StandardCharsets.UTF_8).strip();
    } catch (IOException | InvalidPathException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING, variable + " names " + path + ", which cannot be read.", e);
    }
  }

  /** What {@code application.properties} says, without looking at profiles. */
  static Properties defaults() {
    Properties defaults = new Properties();
    try (InputStream in =
        Given.class.getClassLoader().getResourceAsStream("application.properties")) {
      defaults.load(in);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    return defaults;
  }
}

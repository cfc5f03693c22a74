package club.emberwell.launch;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;

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

  private final Map<String, String> environment;
  private final Properties file = new Properties();

  Given(Map<String, String> environment) {
    this.environment = Map.copyOf(environment);
  }

  /** Reads {@code emberwell.properties}, where the home has one. */
  void readHome(Path home) {
    Path path = home.resolve("emberwell.properties");
    if (!Files.exists(path)) {
      return;
    }
    try (Reader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
      file.load(reader);
    } catch (IOException | IllegalArgumentException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING, path + " cannot be read: " + e.getMessage() + ".", e);
    }
  }

  /** The value an operator gave, if any. */
  Optional<String> value(String name) {
    String variable = variable(name);
    String value = System.getProperty(name, environment.get(variable));
    if (value == null && environment.containsKey(variable + "_FILE")) {
      value = contentOf(variable + "_FILE");
    }
    if (value == null) {
      value = file.getProperty(name);
    }
    return Optional.ofNullable(value).map(String::trim).filter(text -> !text.isEmpty());
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
      if (environment.containsKey(variable(name) + "_FILE")) {
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
    Path path = Path.of(environment.get(variable));
    try {
      return Files.readString(path, StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING, variable + " names " + path + ", which cannot be read.", e);
    }
  }

  private static Properties defaults() {
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

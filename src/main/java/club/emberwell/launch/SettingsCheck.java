package club.emberwell.launch;

import club.emberwell.catalog.Nearness;
import io.smallrye.config.ConfigValue;
import io.smallrye.config.EnvConfigSource;
import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.lang.management.ManagementFactory;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Holds what an operator gave against what there is, before anything starts. */
final class SettingsCheck {
  private static final String OURS = "emberwell.";

  /** Beside ours, the file may set what the framework knows, such as {@code quarkus.log.level}. */
  private static final List<String> OF_THE_FRAMEWORK = List.of("quarkus.", "mp.");

  private static final String EXPRESSION = "${";
  private static final int EXPRESSIONS_FIRST = 500;
  private static final int ENVIRONMENT = 300;

  private final Given given;
  private final Settings known = Settings.known();
  private final SmallRyeConfig config;

  SettingsCheck(Given given) {
    this.given = given;
    this.config = config();
  }

  /** All that was given, so that an expression in a value ({@code ${emberwell.home}}) is read. */
  private SmallRyeConfig config() {
    Map<String, String> values = new HashMap<>();
    Map<String, String> presets = new HashMap<>();
    for (Setting each : known.all()) {
      given.value(each.name()).ifPresent(value -> values.put(each.name(), value));
      each.preset().ifPresent(value -> presets.put(each.name(), value));
    }
    return new SmallRyeConfigBuilder()
        .addDefaultInterceptors()
        .addSystemSources()
        .withSources(
            new EnvConfigSource(given.environment(), ENVIRONMENT),
            new PropertiesConfigSource(values, "given", EXPRESSIONS_FIRST))
        .withDefaultValues(presets)
        .build();
  }

  /** The value that counts, with expressions put in; empty where none was given and none is set. */
  Optional<String> effective(Setting setting) {
    ConfigValue read = config.getConfigValue(setting.name());
    String raw = read.getRawValue();
    if (read.getValue() == null && raw != null && raw.contains(EXPRESSION)) {
      String where =
          given.said(setting.name()).map(Given.Said::where).findFirst().orElse(setting.name());
      throw wrong(where + " has an expression, ${…}, that leads nowhere; mend it or write \\${.");
    }
    return Optional.ofNullable(read.getValue());
  }

  /**
   * Refuses what is wrong.
   *
   * @throws LaunchException with one sentence about the first of it
   */
  void require() {
    given.variables().sorted().forEach(this::requireKnownVariable);
    given.namesInFile().stream().sorted().forEach(this::requireKnownName);
    commandLineNames().forEach(this::requireKnownProperty);
    known.all().forEach(this::requireRightValue);
  }

  private void requireKnownVariable(String variable) {
    if (!known.hasVariable(variable)) {
      throw wrong(
          variable
              + " is no setting of Emberwell; did you mean "
              + nearest(Given.variable(variable), Setting::variable)
              + "?");
    }
  }

  private void requireKnownName(String name) {
    boolean framework = OF_THE_FRAMEWORK.stream().anyMatch(name::startsWith);
    if (!framework && known.named(name).isEmpty()) {
      throw wrong(
          name
              + " in "
              + given.filePath()
              + " is no setting of Emberwell; did you mean "
              + nearest(name, Setting::name)
              + "?");
    }
  }

  /** What stands as {@code -D} on the command line of Java, not what the program sets itself. */
  private static Stream<String> commandLineNames() {
    return ManagementFactory.getRuntimeMXBean().getInputArguments().stream()
        .filter(argument -> argument.startsWith("-D" + OURS))
        .map(argument -> argument.substring("-D".length()).replaceFirst("=.*", ""));
  }

  private void requireKnownProperty(String name) {
    if (known.named(name).isEmpty()) {
      throw wrong(
          "-D"
              + name
              + " is no setting of Emberwell; did you mean "
              + nearest(name, Setting::name)
              + "?");
    }
  }

  private String nearest(String text, Function<Setting, String> spelling) {
    Nearness nearness = new Nearness(List.of(text));
    return known.all().stream()
        .map(spelling)
        .min(Comparator.comparingDouble(nearness::to))
        .orElseThrow();
  }

  private void requireRightValue(Setting setting) {
    requireReadable(setting);
    given.said(setting.name()).forEach(said -> requireRight(setting, said));
  }

  /** Also that nothing is said twice: one of the two would count, and nobody knows which. */
  private void requireReadable(Setting setting) {
    List<String> variables =
        given
            .said(setting.name())
            .map(Given.Said::where)
            .filter(where -> where.startsWith(setting.variable()))
            .toList();
    if (variables.size() > 1) {
      throw wrong(String.join(" and ", variables) + " are both set; leave one of them out.");
    }
  }

  private void requireRight(Setting setting, Given.Said said) {
    String value = said.value().strip();
    if (value.isEmpty()) {
      if (setting.preset().isPresent()) {
        throw wrong(said.where() + " is empty; give it a value or leave it out.");
      }
      return;
    }
    if (!setting.kind().fits().test(expanded(setting, said))) {
      String instead = setting.repeatable() ? ", not " + value.lines().findFirst().get() : "";
      throw wrong(said.where() + " must be " + setting.kind().words() + instead + ".");
    }
  }

  private String expanded(Setting setting, Given.Said said) {
    boolean counts = given.value(setting.name()).filter(said.value().strip()::equals).isPresent();
    if (!counts || !said.value().contains(EXPRESSION)) {
      return said.value().strip();
    }
    return effective(setting).orElse("");
  }

  private static LaunchException wrong(String sentence) {
    return new LaunchException(ExitCode.WRONG_SETTING, sentence);
  }
}

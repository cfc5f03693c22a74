package club.emberwell.launch;

import io.smallrye.config.ConfigValidationException;
import io.smallrye.config.SmallRyeConfigBuilder;
import io.smallrye.config.SmallRyeConfigBuilderCustomizer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Holds what an operator says to the framework itself ({@code quarkus.…}) against what it takes:
 * its own start would end with a stack.
 */
final class FrameworkSettings {
  /** What the build wrote of every setting of the framework, as its own start uses it. */
  private static final String ALL = "io.quarkus.runtime.generated.RunTimeConfig";

  private static final Pattern NAME = Pattern.compile("\\b((?:quarkus|mp)\\.[\\w.\"-]*\\w)");

  private FrameworkSettings() {}

  /**
   * Reads all of them, where any was given.
   *
   * @throws LaunchException with one sentence about the first that is wrong
   */
  static void require(Given given) {
    if (!isGiven(given)) {
      return;
    }
    try {
      SmallRyeConfigBuilder all = new SmallRyeConfigBuilder();
      ((SmallRyeConfigBuilderCustomizer) Class.forName(ALL).getDeclaredConstructor().newInstance())
          .configBuilder(all);
      all.build();
    } catch (ConfigValidationException e) {
      throw wrong(e.getProblem(0).getMessage(), e);
    } catch (IllegalArgumentException e) {
      throw wrong(e.getMessage(), e);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static boolean isGiven(Given given) {
    return Stream.concat(
            given.namesInFile().stream(),
            Stream.concat(
                given.environment().keySet().stream(),
                System.getProperties().stringPropertyNames().stream()))
        .map(Given::variable)
        .anyMatch(name -> name.startsWith("QUARKUS_") || name.startsWith("MP_"));
  }

  /** The value is not repeated: it may be a password. */
  private static LaunchException wrong(String said, RuntimeException cause) {
    Matcher name = NAME.matcher(String.valueOf(said));
    String which = name.find() ? name.group(1) : "A setting that begins with quarkus.";
    return new LaunchException(
        ExitCode.WRONG_SETTING,
        which
            + " has a value that Quarkus does not take; mend it or leave it out"
            + " (https://quarkus.io/guides/all-config).",
        cause);
  }
}

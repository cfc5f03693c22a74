package club.emberwell.launch;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Consumer;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The options of the program and of all its verbs: they may stand before or after the verb. */
final class Where {
  static final String HOME = "emberwell.home";

  @Option(
      names = "--home",
      paramLabel = "DIR",
      scope = ScopeType.INHERIT,
      description =
          "The folder of this server (EMBERWELL_HOME; default ~/.emberwell, for demo"
              + " ~/.emberwell-demo).")
  private Path home;

  @Option(
      names = "--host",
      scope = ScopeType.INHERIT,
      description = "The address to listen on (EMBERWELL_HOST; default 127.0.0.1).")
  private String host;

  @Option(
      names = "--port",
      scope = ScopeType.INHERIT,
      description = "The port (EMBERWELL_PORT; default 8080).")
  private String port;

  @Option(
      names = "--built-in-database",
      scope = ScopeType.INHERIT,
      description = "Use the built-in database even where other machines reach the server.")
  private boolean builtInDatabase;

  @Option(
      names = "--as-new",
      scope = ScopeType.INHERIT,
      description =
          "Let the home belong to whatever the database holds, also where it belonged to another"
              + " club, or where the database is empty and a new club begins.")
  private boolean asNew;

  private final Map<String, String> environment;

  Where(Map<String, String> environment) {
    this.environment = environment;
  }

  /** Runs a server until the process is told to stop. */
  void run(String homeSetting) {
    Given given = given(homeSetting);
    new SettingsCheck(given).require();
    new Server(given, address(given), builtInDatabase, asNew).run(folder(given, homeSetting));
  }

  /** The rescue of a club, whether its server runs or not. */
  Rescue rescue() {
    Given given = given(HOME);
    new SettingsCheck(given).require();
    return new Rescue(given, folder(given, HOME), address(given));
  }

  /** The benches of a club's members, whether its server runs or not. */
  MemberBench bench() {
    Given given = given(HOME);
    new SettingsCheck(given).require();
    return new MemberBench(given, folder(given, HOME).toAbsolutePath());
  }

  /** What is set, with the file of the home. */
  Given given(String homeSetting) {
    Given given = new Given(environment);
    given.readHome(folder(given, homeSetting));
    return given;
  }

  /** The folder of this server. */
  Path folder(Given given) {
    return folder(given, HOME);
  }

  /** Backups of a club, and what is made of them. */
  Keeping keeping(Consumer<String> progress) {
    Given given = given(HOME);
    new SettingsCheck(given).require();
    return new Keeping(given, folder(given, HOME).toAbsolutePath(), progress);
  }

  private Path folder(Given given, String homeSetting) {
    try {
      return home != null ? home : Path.of(given.valueOrDefault(homeSetting));
    } catch (InvalidPathException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING,
          Given.variable(homeSetting) + " must be the path of a folder.",
          e);
    }
  }

  /** Where its server listens. */
  Address address(Given given) {
    return Address.of(
        host != null ? host : given.valueOrDefault("emberwell.host"),
        port != null ? port : given.valueOrDefault("emberwell.port"));
  }

  /** Whether this is the name of a variable that was set. */
  boolean isSet(String variable) {
    return environment.containsKey(variable);
  }
}

package club.emberwell.launch;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The options of the program and of all its verbs: they may stand before or after the verb. */
final class Where {
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

  /** Runs a server until the process is told to stop. */
  void run(String homeSetting) {
    Given given = new Given(System.getenv());
    Path folder = folder(given, homeSetting);
    given.readHome(folder);
    new Server(given, address(given), builtInDatabase).run(folder);
  }

  /** The rescue of a club whose server runs. */
  Rescue rescue() {
    Given given = new Given(System.getenv());
    Path folder = folder(given, "emberwell.home");
    given.readHome(folder);
    return new Rescue(given, folder, address(given));
  }

  private Path folder(Given given, String homeSetting) {
    return home != null ? home : Path.of(given.valueOrDefault(homeSetting));
  }

  private Address address(Given given) {
    return Address.of(
        host != null ? host : given.valueOrDefault("emberwell.host"),
        port != null ? port : given.valueOrDefault("emberwell.port"));
  }
}

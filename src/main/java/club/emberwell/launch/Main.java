package club.emberwell.launch;

import io.quarkus.runtime.annotations.QuarkusMain;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The program: reads the command line and runs the server. */
@QuarkusMain
@Command(
    name = "emberwell",
    description = "The server on which a club shares laser settings that worked.",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    subcommands = {
      Main.Start.class,
      Main.Demo.class,
      Rescue.ResetLink.class,
      Rescue.LocalSignIn.class
    })
public final class Main implements Callable<Integer> {
  @Mixin private Where where;

  private Main() {}

  /** Runs until the process is told to stop. */
  public static void main(String[] args) {
    int code = commandLine().execute(args);
    System.exit(code);
  }

  static CommandLine commandLine() {
    return new CommandLine(new Main())
        .setExecutionExceptionHandler(
            (failure, line, parsed) -> {
              if (failure instanceof LaunchException refusal) {
                say(line.getErr(), refusal);
                return refusal.exitCode().number();
              }
              throw failure;
            });
  }

  private static void say(PrintWriter out, LaunchException refusal) {
    out.println(refusal.getMessage());
    out.flush();
  }

  @Override
  public Integer call() {
    where.run("emberwell.home");
    return ExitCode.STOPPED.number();
  }

  /** Runs a club's server; also what happens without a verb. */
  @Command(
      name = "start",
      description = "Runs the server (the default verb).",
      mixinStandardHelpOptions = true)
  static final class Start implements Callable<Integer> {
    @Mixin private Where where;

    @Override
    public Integer call() {
      where.run("emberwell.home");
      return ExitCode.STOPPED.number();
    }
  }

  /** Runs an invented club in a home of its own. */
  @Command(
      name = "demo",
      description = "Runs an invented club, open to anyone who can reach it, in its own home.",
      mixinStandardHelpOptions = true)
  static final class Demo implements Callable<Integer> {
    @Mixin private Where where;

    @Override
    public Integer call() {
      System.setProperty("emberwell.demo", "true");
      if (System.getenv("EMBERWELL_DESK_FIRST_LOOK") == null) {
        System.setProperty("emberwell.desk.first-look", "0");
      }
      System.setProperty("emberwell.first.door", "open");
      System.setProperty("emberwell.first.reading-public", "true");
      if (System.getenv("EMBERWELL_SCENARIO") == null) {
        System.setProperty("emberwell.scenario", "seed-scenario");
      }
      where.run("emberwell.demo-home");
      return ExitCode.STOPPED.number();
    }
  }

  /** The options every verb that serves has. */
  static final class Where {
    @Option(
        names = "--home",
        paramLabel = "DIR",
        description = "The folder of this server (EMBERWELL_HOME; default ~/.emberwell).")
    private Path home;

    @Option(
        names = "--host",
        description = "The address to listen on (EMBERWELL_HOST; default 127.0.0.1).")
    private String host;

    @Option(names = "--port", description = "The port (EMBERWELL_PORT; default 8080).")
    private String port;

    @Option(
        names = "--built-in-database",
        description = "Use the built-in database even where other machines reach the server.")
    private boolean builtInDatabase;

    void run(String homeSetting) {
      Given given = new Given(System.getenv());
      Path folder = home != null ? home : Path.of(given.valueOrDefault(homeSetting));
      given.readHome(folder);
      Address address =
          Address.of(
              host != null ? host : given.valueOrDefault("emberwell.host"),
              port != null ? port : given.valueOrDefault("emberwell.port"));
      new Server(given, address, builtInDatabase).run(folder);
    }
  }

  /** The version the build gave the program. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Main.class.getPackage().getImplementationVersion();
      return new String[] {"Emberwell " + version + ", tables of version " + Schema.known()};
    }
  }
}

package club.emberwell.launch;

import club.emberwell.keep.KeepRefused;
import club.emberwell.keep.SchemaVersion;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;

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
      Rescue.LocalSignIn.class,
      Rescue.MakeData.class,
      ShowSettings.class,
      Doctor.class,
      KeepingVerbs.BackupVerb.class,
      KeepingVerbs.RestoreVerb.class,
      KeepingVerbs.VerifyVerb.class,
      KeepingVerbs.MoveVerb.class,
      BenchVerbs.SaveVerb.class,
      BenchVerbs.RestoreVerb.class,
      Manual.class,
      Completion.class
    })
public final class Main implements Callable<Integer> {
  @Mixin private final Where where;

  /** As the framework makes it, which calls {@link #main} and nothing else. */
  Main() {
    this(System.getenv());
  }

  private Main(Map<String, String> environment) {
    this.where = new Where(environment);
  }

  Where where() {
    return where;
  }

  /** Runs until the process is told to stop. */
  public static void main(String[] args) {
    int code = commandLine(System.getenv()).execute(args);
    System.exit(code);
  }

  /** The program with the variables it was given. */
  static CommandLine commandLine(Map<String, String> environment) {
    return new CommandLine(new Main(environment))
        .setExecutionExceptionHandler(
            (failure, line, parsed) -> {
              if (failure instanceof LaunchException refusal) {
                return refuse(line, refusal.getMessage(), refusal.exitCode());
              }
              if (failure instanceof KeepRefused refusal) {
                return refuse(line, refusal.getMessage(), ExitCode.of(refusal.why()));
              }
              throw failure;
            });
  }

  private static int refuse(CommandLine line, String sentence, ExitCode code) {
    line.getErr().println(sentence);
    line.getErr().flush();
    return code.number();
  }

  @Override
  public Integer call() {
    where.run(Where.HOME);
    return ExitCode.STOPPED.number();
  }

  /** Runs a club's server; also what happens without a verb. */
  @Command(
      name = "start",
      description = "Runs the server (the default verb).",
      mixinStandardHelpOptions = true)
  static final class Start implements Callable<Integer> {
    @ParentCommand private Main main;

    @Override
    public Integer call() {
      return main.call();
    }
  }

  /** Runs an invented club in a home of its own. */
  @Command(
      name = "demo",
      description = "Runs an invented club, open to anyone who can reach it, in its own home.",
      mixinStandardHelpOptions = true)
  static final class Demo implements Callable<Integer> {
    @ParentCommand private Main main;

    @Override
    public Integer call() {
      System.setProperty("emberwell.demo", "true");
      if (!main.where().isSet("EMBERWELL_DESK_FIRST_LOOK")) {
        System.setProperty("emberwell.desk.first-look", "0");
      }
      System.setProperty("emberwell.first.door", "open");
      System.setProperty("emberwell.first.reading-public", "true");
      if (!main.where().isSet("EMBERWELL_SCENARIO")) {
        System.setProperty("emberwell.scenario", "seed-scenario");
      }
      main.where().run("emberwell.demo-home");
      return ExitCode.STOPPED.number();
    }
  }

  /** The version the build gave the program. */
  static final class Version implements CommandLine.IVersionProvider {
    /** From the jar; tests have none. */
    static String number() {
      String packaged = Main.class.getPackage().getImplementationVersion();
      return packaged == null ? "not packaged" : packaged;
    }

    @Override
    public String[] getVersion() {
      return new String[] {
        "Emberwell " + number() + ", tables of version " + SchemaVersion.known()
      };
    }
  }
}

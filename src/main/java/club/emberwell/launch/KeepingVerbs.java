package club.emberwell.launch;

import club.emberwell.keep.Backup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** The verbs that keep a club and bring it back. What they do goes line by line to the error. */
final class KeepingVerbs {
  private KeepingVerbs() {}

  private static Keeping of(Main main) {
    return main.where().keeping(System.err::println);
  }

  /** The verb that makes a backup. */
  @Command(
      name = "backup",
      description =
          "Writes all that the club is into one file, while its server runs or not, and prints"
              + " where. The file holds secrets: keep it as the database.",
      mixinStandardHelpOptions = true)
  static final class BackupVerb implements Callable<Integer> {
    @ParentCommand private Main main;

    @Parameters(
        arity = "0..1",
        paramLabel = "PLACE",
        description = "A folder, or the file to write (NAME.zip); default: HOME/backups.")
    private Path place;

    @Override
    public Integer call() {
      Backup.Done done = of(main).backup(place);
      System.out.println(done.file());
      return ExitCode.STOPPED.number();
    }
  }

  /** The verb that brings a club back. */
  @Command(
      name = "restore",
      description =
          "Brings a club back from a backup of this version or an older one, with the server"
              + " stopped. People sign in anew; whoever left since stays away.",
      mixinStandardHelpOptions = true)
  static final class RestoreVerb implements Callable<Integer> {
    @ParentCommand private Main main;

    @Parameters(paramLabel = "FILE", description = "The backup.")
    private Path file;

    @Option(
        names = "--replace",
        description = "Put it in the place of the club that is there, of which a backup is made.")
    private boolean replace;

    @Option(names = "--end-tokens", description = "End the keys of programs, too.")
    private boolean endTokens;

    @Option(
        names = "--hold-mail",
        description = "Never send the letters and the calls of webhooks that waited.")
    private boolean holdMail;

    @Override
    public Integer call() {
      of(main).restore(file, replace, endTokens, holdMail);
      System.out.println("The club is back. Start the server; it builds its search index anew.");
      return ExitCode.STOPPED.number();
    }
  }

  /** The verb that tries a backup. */
  @Command(
      name = "verify",
      description =
          "Checks the sums of a backup, brings it back beside the club's tables, compares every"
              + " table, and takes it away again.",
      mixinStandardHelpOptions = true)
  static final class VerifyVerb implements Callable<Integer> {
    @ParentCommand private Main main;

    @Parameters(paramLabel = "FILE", description = "The backup.")
    private Path file;

    @Option(names = "--quick", description = "Check the sums only; needs no database.")
    private boolean quick;

    @Override
    public Integer call() {
      of(main).verify(file, quick);
      System.out.println(quick ? "The backup is undamaged." : "The backup can be brought back.");
      return ExitCode.STOPPED.number();
    }
  }

  /** The verb that changes the database. */
  @Command(
      name = "move",
      description =
          "Moves the club from the built-in database to an empty one of your own, with the server"
              + " stopped.",
      mixinStandardHelpOptions = true)
  static final class MoveVerb implements Callable<Integer> {
    @ParentCommand private Main main;

    @Parameters(
        paramLabel = "URL",
        description = "Where the club is to be, as in EMBERWELL_DATABASE_URL.")
    private String url;

    @Option(names = "--user", paramLabel = "NAME", description = "Who owns the database.")
    private String user = "";

    @Option(
        names = "--password-file",
        paramLabel = "FILE",
        description = "The file that holds the owner's password.")
    private Path passwordFile;

    @Option(
        names = "--hold-mail",
        description = "Never send the letters and the calls of webhooks that wait.")
    private boolean holdMail;

    @Override
    public Integer call() {
      Path old = of(main).move(Database.of(url, user, password()), holdMail);
      System.out.println("The club has moved. Before you start the server, set");
      System.out.println("  EMBERWELL_DATABASE_URL=" + url);
      if (!user.isEmpty()) {
        System.out.println("  EMBERWELL_DATABASE_USER=" + user);
      }
      if (passwordFile != null) {
        System.out.println("  EMBERWELL_DATABASE_PASSWORD_FILE=" + passwordFile.toAbsolutePath());
      }
      System.out.println("The old database lies in " + old + "; delete it when all is well.");
      return ExitCode.STOPPED.number();
    }

    private String password() {
      try {
        return passwordFile == null ? "" : Files.readString(passwordFile).strip();
      } catch (IOException e) {
        throw new LaunchException(ExitCode.WRONG_SETTING, passwordFile + " cannot be read.", e);
      }
    }
  }
}

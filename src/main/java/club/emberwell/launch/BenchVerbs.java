package club.emberwell.launch;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** The verbs that save and restore one member's bench, whether the server runs or not. */
final class BenchVerbs {
  private BenchVerbs() {}

  /** The verb that saves a bench. */
  @Command(
      name = "bench-save",
      description = "Saves all that a member keeps on the bench into a new file, and prints where.",
      mixinStandardHelpOptions = true)
  static final class SaveVerb implements Callable<Integer> {
    @ParentCommand private Main main;

    @Option(names = "--member", paramLabel = "NAME", required = true, description = "Whose bench.")
    private String member;

    @Parameters(paramLabel = "FILE", description = "The file to write (NAME.zip).")
    private Path file;

    @Override
    public Integer call() {
      return main.where().bench().save(member, file);
    }
  }

  /** The verb that restores a bench. */
  @Command(
      name = "bench-restore",
      description =
          "Restores a member's bench from such a file, of this club or another. What is there stays"
              + " as it is; the same file again writes nothing twice.",
      mixinStandardHelpOptions = true)
  static final class RestoreVerb implements Callable<Integer> {
    @ParentCommand private Main main;

    @Option(names = "--member", paramLabel = "NAME", required = true, description = "Whose bench.")
    private String member;

    @Option(names = "--preview", description = "Only tell what would become of it.")
    private boolean preview;

    @Parameters(paramLabel = "FILE", description = "The file.")
    private Path file;

    @Override
    public Integer call() {
      return main.where().bench().restore(member, file, preview);
    }
  }
}

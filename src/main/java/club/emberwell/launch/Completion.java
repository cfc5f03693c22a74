package club.emberwell.launch;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What shells read to complete verbs and options. */
@Command(
    name = "completion",
    description = "Prints the script that makes bash and zsh complete commands and options.",
    mixinStandardHelpOptions = true)
final class Completion implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    CommandSpec program = spec.root();
    String script = AutoComplete.bash(program.name(), program.commandLine());
    spec.commandLine().getOut().print(script);
    spec.commandLine().getOut().flush();
    return ExitCode.STOPPED.number();
  }
}

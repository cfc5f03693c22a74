package club.emberwell.launch;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** What the server would run with. */
@Command(
    name = "settings",
    description =
        "Prints every setting with its value and where it comes from, without secrets; ends with 2"
            + " where one is wrong.",
    mixinStandardHelpOptions = true)
final class ShowSettings implements Callable<Integer> {
  @ParentCommand private Main main;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    Given given = main.where().given(Where.HOME);
    SettingsCheck check = new SettingsCheck(given);
    PrintWriter out = spec.commandLine().getOut();
    for (Setting each : Settings.known().all()) {
      Optional<String> said = given.said(each.name()).findFirst().map(Given.Said::where);
      String value = check.effective(each).map(each::shown).orElse("");
      out.println("# " + said.orElse(value.isEmpty() ? "unset" : "default"));
      out.println(each.name() + "=" + value);
    }
    out.flush();
    check.require();
    return ExitCode.STOPPED.number();
  }
}

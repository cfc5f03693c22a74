package club.emberwell.launch;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Looks a club over: its settings, home, database, index, mail and address. Changes nothing. */
@Command(
    name = "doctor",
    description =
        "Looks the club over, whether its server runs or not, and prints a table of OK, WARN and"
            + " FAIL; ends with 1 where something fails.",
    mixinStandardHelpOptions = true)
final class Doctor implements Callable<Integer> {
  @ParentCommand private Main main;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    List<Finding> all = findings();
    all.forEach(finding -> out.println(finding.row()));
    out.flush();
    boolean well = all.stream().noneMatch(finding -> finding.level() == Finding.Level.FAIL);
    return (well ? ExitCode.STOPPED : ExitCode.FAILED).number();
  }

  private List<Finding> findings() {
    Given given = main.where().given(Where.HOME);
    List<Finding> all = new ArrayList<>();
    SettingsCheck settings;
    try {
      settings = new SettingsCheck(given);
      settings.require();
      all.add(Finding.ok("settings", "All are well written; the verb settings shows them."));
    } catch (LaunchException e) {
      // nothing else can be looked at as the server would see it
      all.add(Finding.fail("settings", e.getMessage()));
      return all;
    }
    Path home = main.where().folder(given);
    all.addAll(new HomeFindings(home).all());
    all.addAll(ofDatabase(given, home));
    String url =
        given
            .value("emberwell.public-url")
            .or(() -> ClubMark.inHome(home).map(ClubMark::publicUrl))
            .orElseGet(() -> main.where().address(given).url());
    all.add(new MailFinding(given, url).look());
    all.add(PublicUrlFinding.of(url));
    return all;
  }

  private static List<Finding> ofDatabase(Given given, Path home) {
    try (ClubDatabase club = ClubDatabase.of(given, home);
        Connection connection = club.connect()) {
      Path index =
          given.value("emberwell.index.dir").map(Path::of).orElseGet(() -> home.resolve("index"));
      return new DatabaseFindings(connection, home, index, !club.startedForThis()).all();
    } catch (LaunchException | SQLException e) {
      return List.of(Finding.fail("database", e.getMessage()));
    }
  }
}

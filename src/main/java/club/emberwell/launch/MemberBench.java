package club.emberwell.launch;

import io.quarkus.runtime.Quarkus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * One member's bench from the command line. A bench is restored by the same checks as on a page, so
 * the application itself does it: opened for this alone, beside a server that runs or without one,
 * with no door, no work by the clock and no index.
 */
final class MemberBench {
  private final Given given;
  private final Path home;

  /**
   * The benches of the club in a home.
   *
   * @param given the settings, with those of the home
   */
  MemberBench(Given given, Path home) {
    this.given = given;
    this.home = home;
  }

  int save(String member, Path file) {
    if (Files.exists(file)) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING, file + " is there already; name a file that is not.");
    }
    return within(BenchApplication.SAVE, member, file.toAbsolutePath().toString());
  }

  int restore(String member, Path file, boolean preview) {
    if (!Files.isReadable(file) || Files.isDirectory(file)) {
      throw new LaunchException(ExitCode.WRONG_SETTING, file + " cannot be read.");
    }
    String verb = preview ? BenchApplication.PREVIEW : BenchApplication.RESTORE;
    return within(verb, member, file.toAbsolutePath().toString());
  }

  private int within(String... words) {
    try (ClubDatabase club = ClubDatabase.of(given, home).answering()) {
      try (Connection connection = club.connectToKnownTables()) {
        connection.isValid(1);
      } catch (SQLException e) {
        throw new LaunchException(
            ExitCode.NO_DATABASE, "The database cannot be used: " + e.getMessage() + ".", e);
      }
      given.publish();
      settings(club.database()).forEach(System::setProperty);
      AtomicInteger code = new AtomicInteger(ExitCode.FAILED.number());
      Quarkus.run(
          BenchApplication.class,
          (number, failure) -> {
            if (failure == null) {
              code.set(number);
            } else {
              System.err.println(failure.getMessage());
            }
          },
          words);
      return code.get();
    }
  }

  /** The club's own settings, and what keeps this one from being a server. */
  private Map<String, String> settings(Database database) {
    Map<String, String> all = new HashMap<>();
    all.put("emberwell.home", home.toString());
    all.put("emberwell.scenario", "none");
    all.put("emberwell.index.dir", temporary().toString());
    all.put("emberwell.database.kind", database.builtIn() ? "built-in" : "configured");
    all.put("quarkus.datasource.jdbc.url", database.url());
    all.put("quarkus.datasource.username", database.user());
    all.put("quarkus.datasource.password", database.password());
    all.put("quarkus.http.host-enabled", "false");
    all.put("quarkus.scheduler.enabled", "false");
    all.put("quarkus.banner.enabled", "false");
    all.put("quarkus.log.console.stderr", "true");
    all.put("quarkus.log.level", "WARN");
    if (given.value("emberwell.public-url").isEmpty()) {
      // the home remembers the address that its server was started with
      ClubMark.inHome(home).ifPresent(mark -> all.put("emberwell.public-url", mark.publicUrl()));
    }
    return all;
  }

  private static Path temporary() {
    try {
      Path folder = Files.createTempDirectory("emberwell-bench-");
      folder.toFile().deleteOnExit();
      return folder;
    } catch (IOException e) {
      throw new LaunchException(ExitCode.FAILED, "There is no place for files: " + e + ".", e);
    }
  }
}

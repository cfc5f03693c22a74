package club.emberwell.launch;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Base64;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.apache.commons.codec.digest.DigestUtils;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** What only somebody on the server's own machine can do: mostly when nobody gets in any more. */
final class Rescue {
  private static final int SECRET_BYTES = 32;
  private static final String LINK =
      """
      INSERT INTO once_link (secret_hash, kind, member_id, created_at, expires_at)
      VALUES (?, 'reset', ?, now(), now() + interval '1 hour')
      """;
  private static final String LOG =
      """
      INSERT INTO audit (action, entity, entity_id) VALUES (?, ?, ?)
      """;

  private final Given given;
  private final Path home;
  private final Address address;

  /**
   * A rescue of the club in a home, whether its server runs or not.
   *
   * @param given the settings, with those of the home
   * @param address where its server listens
   */
  Rescue(Given given, Path home, Address address) {
    this.given = given;
    this.home = home;
    this.address = address;
  }

  /** Makes a link with which an active member chooses a new password, within an hour. */
  String resetLink(String handle) {
    byte[] bytes = new byte[SECRET_BYTES];
    new SecureRandom().nextBytes(bytes);
    String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    return inOne(
        connection -> {
          UUID member = member(connection, handle);
          run(connection, "DELETE FROM once_link WHERE kind = 'reset' AND member_id = ?", member);
          run(connection, LINK, DigestUtils.sha256(secret), member);
          run(connection, LOG, "make-reset-link", "member", member.toString());
          return publicUrl() + "/reset/" + secret;
        });
  }

  /** Lets names and passwords of this server count again, where only the provider's word did. */
  void localSignIn() {
    inOne(
        connection -> {
          run(connection, "UPDATE club_option SET value = 'on' WHERE key = 'local-sign-in'");
          run(connection, LOG, "switch-on-local-sign-in", "club", "options");
          return null;
        });
  }

  /** Has the data made anew. */
  void askForData() {
    inOne(
        connection -> {
          run(connection, "UPDATE data_making SET asked_at = now()");
          return null;
        });
  }

  /** What a verb does in one transaction. */
  private interface Work<T> {
    T with(Connection connection) throws SQLException;
  }

  private <T> T inOne(Work<T> work) {
    try (ClubDatabase club = ClubDatabase.of(given, home);
        Connection connection = club.connectToKnownTables()) {
      connection.setAutoCommit(false);
      T answer = work.with(connection);
      connection.commit();
      return answer;
    } catch (SQLException e) {
      throw new LaunchException(
          ExitCode.NO_DATABASE, "The database cannot be used: " + e.getMessage() + ".", e);
    }
  }

  /** As set for this verb; else as the server had it at its last start. */
  private String publicUrl() {
    return given
        .value("emberwell.public-url")
        .or(() -> ClubMark.inHome(home).map(ClubMark::publicUrl))
        .orElseGet(address::url);
  }

  private static UUID member(Connection connection, String handle) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT id FROM member WHERE lower(handle) = lower(?) AND status = 'active'")) {
      select.setString(1, handle);
      try (ResultSet found = select.executeQuery()) {
        if (!found.next()) {
          throw new LaunchException(
              ExitCode.WRONG_SETTING, "No active member is called " + handle + ".");
        }
        return found.getObject(1, UUID.class);
      }
    }
  }

  private static void run(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      statement.executeUpdate();
    }
  }

  private static void say(CommandSpec spec, String sentence) {
    spec.commandLine().getOut().println(sentence);
    spec.commandLine().getOut().flush();
  }

  /** The verb that makes a link. */
  @Command(
      name = "reset-link",
      description = "Prints a link with which a member chooses a new password, within an hour.",
      mixinStandardHelpOptions = true)
  static final class ResetLink implements Callable<Integer> {
    @ParentCommand private Main main;
    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "NAME", description = "The member's name.")
    private String handle;

    @Override
    public Integer call() {
      say(spec, main.where().rescue().resetLink(handle));
      return ExitCode.STOPPED.number();
    }
  }

  /** The verb that opens local sign-in again. */
  @Command(
      name = "local-sign-in",
      description =
          "Lets names and passwords count again where single sign-on alone did and fails.",
      mixinStandardHelpOptions = true)
  static final class LocalSignIn implements Callable<Integer> {
    @ParentCommand private Main main;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() {
      main.where().rescue().localSignIn();
      say(spec, "Names and passwords count again, within some seconds.");
      return ExitCode.STOPPED.number();
    }
  }

  /** The verb that has the data made anew. */
  @Command(
      name = "make-data",
      description = "Has the server make the data anew that everybody can take along.",
      mixinStandardHelpOptions = true)
  static final class MakeData implements Callable<Integer> {
    @ParentCommand private Main main;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() {
      main.where().rescue().askForData();
      say(
          spec,
          "The server begins within a minute of running; the page /data tells when it is done.");
      return ExitCode.STOPPED.number();
    }
  }
}

package club.emberwell.launch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Base64;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.apache.commons.codec.digest.DigestUtils;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** What only somebody on the server's own machine can do: mostly when nobody gets in any more. */
final class Rescue {
  private static final Duration PATIENCE = Duration.ofSeconds(5);
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
   * A rescue of the club in a home.
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
    try (Connection connection = connect()) {
      connection.setAutoCommit(false);
      UUID member = member(connection, handle);
      run(connection, "DELETE FROM once_link WHERE kind = 'reset' AND member_id = ?", member);
      run(connection, LINK, DigestUtils.sha256(secret), member);
      run(connection, LOG, "make-reset-link", "member", member.toString());
      connection.commit();
      return given.value("emberwell.public-url").orElseGet(address::url) + "/reset/" + secret;
    } catch (SQLException e) {
      throw unreadable(e);
    }
  }

  /** Lets names and passwords of this server count again, where only the provider's word did. */
  void localSignIn() {
    try (Connection connection = connect()) {
      connection.setAutoCommit(false);
      run(connection, "UPDATE club_option SET value = 'on' WHERE key = 'local-sign-in'");
      run(connection, LOG, "switch-on-local-sign-in", "club", "options");
      connection.commit();
    } catch (SQLException e) {
      throw unreadable(e);
    }
  }

  /** Has the data made anew. */
  void askForData() {
    try (Connection connection = connect()) {
      connection.setAutoCommit(false);
      run(connection, "UPDATE data_making SET asked_at = now()");
      connection.commit();
    } catch (SQLException e) {
      throw unreadable(e);
    }
  }

  private Connection connect() {
    Database database = Database.configured(given).orElseGet(this::builtIn);
    return database.connect(PATIENCE);
  }

  private Database builtIn() {
    Path folder = home.resolve("postgres");
    try {
      Postmaster running =
          Postmaster.runningOn(folder.toRealPath().resolve("data")).orElseThrow(IOException::new);
      return new Database(
          "jdbc:postgresql://127.0.0.1:" + running.port() + "/emberwell",
          EmbeddedPostgres.USER,
          Files.readString(folder.resolve("password"), StandardCharsets.UTF_8).strip(),
          true);
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "No server is running on the home " + home + "; start it, and then try again.",
          e);
    }
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

  private static LaunchException unreadable(SQLException e) {
    return new LaunchException(
        ExitCode.NO_DATABASE, "The database cannot be used: " + e.getMessage() + ".", e);
  }

  /** The verb that makes a link. */
  @Command(
      name = "reset-link",
      description = "Prints a link with which a member of a running server chooses a new password.",
      mixinStandardHelpOptions = true)
  static final class ResetLink implements Callable<Integer> {
    @ParentCommand private Main main;

    @Parameters(paramLabel = "NAME", description = "The member's name.")
    private String handle;

    @Override
    public Integer call() {
      System.out.println(main.where().rescue().resetLink(handle));
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

    @Override
    public Integer call() {
      main.where().rescue().localSignIn();
      System.out.println("Names and passwords count again, within some seconds.");
      return ExitCode.STOPPED.number();
    }
  }

  /** The verb that has the data made anew. */
  @Command(
      name = "make-data",
      description = "Has a running server make the data anew that everybody can take along.",
      mixinStandardHelpOptions = true)
  static final class MakeData implements Callable<Integer> {
    @ParentCommand private Main main;

    @Override
    public Integer call() {
      main.where().rescue().askForData();
      System.out.println(
          "The server begins within a minute; the page /data tells when it is done.");
      return ExitCode.STOPPED.number();
    }
  }
}

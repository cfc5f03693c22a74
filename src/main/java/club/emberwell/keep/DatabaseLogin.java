package club.emberwell.keep;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * The database of a club, as its owner reaches it.
 *
 * @param url as JDBC wants it
 */
public record DatabaseLogin(String url, String user, String password) {
  /** By this name connections of backups are known; a server's are called {@code emberwell}. */
  private static final String NAME = "emberwell-keep";

  /** Texts that read the same on every server, and no limit of time that a server was given. */
  private static final String PLAIN =
      """
      SELECT set_config(s.name, w.value, false)
        FROM (VALUES ('DateStyle', 'ISO, YMD'), ('IntervalStyle', 'postgres'), ('TimeZone', 'UTC'),
                     ('bytea_output', 'hex'), ('extra_float_digits', '1'),
                     ('statement_timeout', '0'), ('lock_timeout', '0'),
                     ('transaction_timeout', '0'), ('idle_in_transaction_session_timeout', '0'))
             AS w (name, value)
        JOIN pg_settings s ON s.name = w.name
      """;

  /** A connection that sees the club's schema. */
  Connection connect() throws SQLException {
    return plain(source(null));
  }

  /** A connection that sees one schema alone. */
  Connection connect(String schema) throws SQLException {
    return plain(source(schema));
  }

  /** Connections that see one schema alone; null: as the address says. */
  DataSource source(String schema) {
    PGSimpleDataSource source = new PGSimpleDataSource();
    source.setUrl(url);
    source.setUser(user);
    source.setPassword(password);
    source.setApplicationName(NAME);
    source.setConnectTimeout(10);
    source.setTcpKeepAlive(true);
    if (schema != null) {
      source.setCurrentSchema(schema);
    }
    return source;
  }

  private static Connection plain(DataSource source) throws SQLException {
    Connection connection = source.getConnection();
    try (Statement statement = connection.createStatement()) {
      statement.execute(PLAIN);
    }
    return connection;
  }
}

package club.emberwell.keep;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * Somebody who left: an id and a choice, as the table {@code erasure} holds them.
 *
 * @param choice what became of the measurements: keep or remove
 */
public record Erased(UUID member, String choice, Instant at) {
  private static final String ALL = "SELECT member_id, choice, at FROM erasure ORDER BY at";

  /** All who left a club; nobody where there is none. */
  static List<Erased> in(Connection connection) throws SQLException {
    List<Erased> found = new ArrayList<>();
    if (SchemaVersion.appliedTo(connection) == 0) {
      return found;
    }
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(ALL)) {
      while (row.next()) {
        found.add(
            new Erased(
                row.getObject(1, UUID.class),
                row.getString(2),
                row.getObject(3, OffsetDateTime.class).toInstant()));
      }
    }
    return found;
  }
}

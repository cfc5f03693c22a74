package club.emberwell.keep;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What stands in every table of a database, asked in other words than the backup asks. */
final class EveryTable {
  private static final Path FILL = Path.of("src/test/resources/kept/fill.sql");

  private EveryTable() {}

  /** Rows for the tables that the scenario leaves empty. */
  static void fill(Connection connection) throws SQLException, IOException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(Files.readString(FILL, StandardCharsets.UTF_8));
    }
  }

  /** A sum over all rows of each table, in whatever order; with the number of rows. */
  static Map<String, String> sums(Connection connection) throws SQLException {
    List<String> tables = new ArrayList<>();
    Map<String, String> sums = new TreeMap<>();
    try (Statement statement = connection.createStatement()) {
      statement.execute("set timezone = 'UTC'");
      try (ResultSet row =
          statement.executeQuery(
              """
              select table_name from information_schema.tables
               where table_schema = current_schema() and table_type = 'BASE TABLE'
                 and table_name <> 'flyway_schema_history'
              """)) {
        while (row.next()) {
          tables.add(row.getString(1));
        }
      }
      for (String table : tables) {
        try (ResultSet row =
            statement.executeQuery(
                """
                select count(*) || ' ' || coalesce(sum(hashtextextended(to_jsonb(t)::text, 0)), 0)
                  from "%s" t
                """
                    .formatted(table))) {
          row.next();
          sums.put(table, row.getString(1));
        }
      }
    }
    return sums;
  }
}

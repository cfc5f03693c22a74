package club.emberwell.keep;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The versions of the tables: the one this program knows and the one a database has. */
public final class SchemaVersion {
  private static final Pattern MIGRATION = Pattern.compile("V(\\d+)__.*\\.sql");
  private static final String APPLIED =
      """
      SELECT coalesce(max(version::numeric), 0)
        FROM flyway_schema_history WHERE success AND version ~ '^[0-9]+$'
      """;

  private SchemaVersion() {}

  /** The newest migration of this program; 0 where there is none. */
  public static int known() {
    try {
      Path code =
          Path.of(SchemaVersion.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      if (Files.isDirectory(code)) {
        return newestIn(code.resolve("db/migration"));
      }
      try (FileSystem jar = FileSystems.newFileSystem(code)) {
        return newestIn(jar.getPath("db/migration"));
      }
    } catch (IOException | URISyntaxException e) {
      throw new IllegalStateException("the program's own migrations cannot be read", e);
    }
  }

  /** The newest migration a database has seen; 0 for an empty one. */
  public static int appliedTo(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      try (ResultSet table =
          statement.executeQuery("SELECT to_regclass('flyway_schema_history') IS NOT NULL")) {
        table.next();
        if (!table.getBoolean(1)) {
          return 0;
        }
      }
      try (ResultSet newest = statement.executeQuery(APPLIED)) {
        newest.next();
        return newest.getInt(1);
      }
    }
  }

  private static int newestIn(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return 0;
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> MIGRATION.matcher(file.getFileName().toString()))
          .filter(Matcher::matches)
          .mapToInt(name -> Integer.parseInt(name.group(1)))
          .max()
          .orElse(0);
    }
  }
}

package club.emberwell.keep;

import club.emberwell.keep.KeepRefused.Why;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Whether a disk has room for one more backup. */
public final class Room {
  /** What an archive takes at most: rows of a table as text, packed, take less than the table. */
  private static final String SIZE =
      """
      SELECT coalesce(sum(pg_total_relation_size(oid)), 0) FROM pg_class
       WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r'
      """;

  private Room() {}

  /**
   * Refuses where the disk of a folder might not hold one more.
   *
   * @throws KeepRefused where it has less room, or cannot be written
   */
  public static void require(Path folder, Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(SIZE)) {
      row.next();
      long needed = row.getLong(1);
      long free = Files.getFileStore(Files.createDirectories(folder)).getUsableSpace();
      if (free < needed) {
        throw new KeepRefused(
            Why.FILE,
            "There is no room in %s (%,d of %,d MB are free)"
                .formatted(folder, free >> 20, needed >> 20));
      }
    } catch (IOException e) {
      throw new KeepRefused(Why.FILE, folder + " cannot be written (" + e + ")", e);
    }
  }
}

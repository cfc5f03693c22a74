package club.emberwell.keep;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * The tables and sequences in the schema of a connection, asked of the database itself, so that a
 * new one cannot be forgotten. What extensions brought and Flyway's own table are none of them.
 */
record Shape(List<Table> tables, List<Sequence> sequences) {
  private static final String TABLES =
      """
      SELECT c.relname, array_agg(a.attname ORDER BY a.attnum) AS columns,
             coalesce((
               SELECT string_agg(
                        quote_ident(k.attname) || CASE WHEN k.attcollation <> 0
                          THEN ' COLLATE "C"' ELSE '' END, ', ' ORDER BY n.place)
                 FROM pg_index i
                 CROSS JOIN unnest(i.indkey) WITH ORDINALITY AS n (number, place)
                 JOIN pg_attribute k ON k.attrelid = i.indrelid AND k.attnum = n.number
                WHERE i.indrelid = c.oid AND i.indisprimary),
               quote_ident(c.relname) || '::text COLLATE "C"') AS place
        FROM pg_class c
        JOIN pg_attribute a ON a.attrelid = c.oid
       WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'r'
         AND c.relname <> 'flyway_schema_history'
         AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''
         AND NOT EXISTS (
           SELECT 1 FROM pg_depend d
            WHERE d.classid = 'pg_class'::regclass AND d.objid = c.oid AND d.deptype = 'e')
       GROUP BY c.oid, c.relname
       ORDER BY c.relname COLLATE "C"
      """;
  private static final String SEQUENCES =
      """
      SELECT c.relname
        FROM pg_class c
       WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'S'
         AND NOT EXISTS (
           SELECT 1 FROM pg_depend d
            WHERE d.classid = 'pg_class'::regclass AND d.objid = c.oid AND d.deptype = 'e')
       ORDER BY c.relname COLLATE "C"
      """;

  /**
   * A table.
   *
   * @param columns those that are no function of others
   * @param place by what its rows are in one order on every server
   */
  record Table(String name, List<String> columns, String place) {

    /** Sends the rows in their order. */
    String copyOut() {
      return "COPY (SELECT %s FROM %s ORDER BY %s) TO STDOUT"
          .formatted(Names.list(columns), Names.quoted(name), place);
    }
  }

  /** A sequence, of an identity column too. */
  record Sequence(String name) {}

  static Shape of(Connection connection) throws SQLException {
    List<Table> tables = new ArrayList<>();
    try (PreparedStatement select = connection.prepareStatement(TABLES);
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        String[] columns = (String[]) row.getArray("columns").getArray();
        tables.add(new Table(row.getString("relname"), List.of(columns), row.getString("place")));
      }
    }
    List<Sequence> sequences = new ArrayList<>();
    try (PreparedStatement select = connection.prepareStatement(SEQUENCES);
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        sequences.add(new Sequence(row.getString("relname")));
      }
    }
    return new Shape(List.copyOf(tables), List.copyOf(sequences));
  }
}

package club.emberwell.keep;

import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a club has in its schema, by name: tables, views, sequences, functions. What somebody else
 * keeps in the same schema is none of it and stays where it is.
 */
record Belongings(Set<String> names) {
  private static final String NAMES =
      """
      SELECT relname FROM pg_class
       WHERE relnamespace = current_schema()::regnamespace AND relkind IN ('r', 'v', 'S')
      UNION
      SELECT proname FROM pg_proc WHERE pronamespace = current_schema()::regnamespace
      """;

  /** In this order nothing hangs on what goes before it. */
  private static final String DROPS =
      """
      SELECT step FROM (
        SELECT 1, format('DROP VIEW %s', c.oid::regclass)
          FROM pg_class c
         WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'v'
           AND c.relname = ANY (?)
        UNION ALL
        SELECT 2, 'DROP TABLE ' || string_agg(c.oid::regclass::text, ', ')
          FROM pg_class c
         WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'r'
           AND c.relname = ANY (?)
        UNION ALL
        SELECT 3, format('DROP SEQUENCE %I.%I', current_schema(), c.relname)
          FROM pg_class c
         WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'S'
           AND c.relname = ANY (?)
           AND NOT EXISTS (
             SELECT 1 FROM pg_depend d WHERE d.classid = 'pg_class'::regclass
                AND d.objid = c.oid AND d.deptype IN ('a', 'i'))
        UNION ALL
        SELECT 4, format('DROP FUNCTION %s', p.oid::regprocedure)
          FROM pg_proc p
         WHERE p.pronamespace = current_schema()::regnamespace AND p.proname = ANY (?)
      ) AS steps (place, step)
      WHERE step IS NOT NULL
      ORDER BY place
      """;

  private static final String MOVES =
      """
      SELECT format('ALTER %s %s SET SCHEMA %I',
               CASE c.relkind WHEN 'r' THEN 'TABLE' WHEN 'v' THEN 'VIEW' ELSE 'SEQUENCE' END,
               c.oid::regclass, current_schema())
        FROM pg_class c
       WHERE c.relnamespace = CAST(? AS regnamespace) AND c.relkind IN ('r', 'v', 'S')
         AND NOT EXISTS (
           SELECT 1 FROM pg_depend d WHERE d.classid = 'pg_class'::regclass
              AND d.objid = c.oid AND c.relkind = 'S' AND d.deptype IN ('a', 'i'))
      UNION ALL
      SELECT format('ALTER FUNCTION %s SET SCHEMA %I', p.oid::regprocedure, current_schema())
        FROM pg_proc p
       WHERE p.pronamespace = CAST(? AS regnamespace)
      """;

  /** What is in the schema of a connection. */
  static Belongings of(Connection connection) throws SQLException {
    Set<String> names = new TreeSet<>();
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(NAMES)) {
      while (row.next()) {
        names.add(row.getString(1));
      }
    }
    return new Belongings(names);
  }

  Belongings and(Belongings others) {
    Set<String> all = new TreeSet<>(names);
    all.addAll(others.names);
    return new Belongings(all);
  }

  /** Takes them out of the schema of a connection, and puts all of another schema there. */
  void replaceBy(String schema, Connection connection) throws SQLException {
    Array gone = connection.createArrayOf("text", names.toArray());
    List<String> steps = new ArrayList<>(read(connection, DROPS, gone, gone, gone, gone));
    steps.addAll(read(connection, MOVES, schema, schema));
    try (Statement statement = connection.createStatement()) {
      for (String step : steps) {
        statement.execute(step);
      }
    }
  }

  private static List<String> read(Connection connection, String select, Object... values)
      throws SQLException {
    List<String> found = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(select)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          found.add(row.getString(1));
        }
      }
    }
    return found;
  }
}

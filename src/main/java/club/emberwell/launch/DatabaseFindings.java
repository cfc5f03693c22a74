package club.emberwell.launch;

import club.emberwell.keep.SchemaVersion;
import club.emberwell.search.index.IndexHash;
import club.emberwell.search.index.StoredIndex;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What can be seen of a database, by reading alone.
 *
 * @param serverMayRun whether the index on disk may be behind what a server has in memory
 */
record DatabaseFindings(Connection connection, Path home, Path index, boolean serverMayRun) {
  /**
   * Sessions, links and codes are told by the clock of the database, logs by that of the server.
   */
  private static final Duration CLOCKS_DIFFER = Duration.ofSeconds(2);

  private static final Duration CLOCKS_MISLEAD = Duration.ofMinutes(1);

  private static final String COLLATION =
      """
      SELECT datname, datcollversion, pg_database_collation_actual_version(oid)
        FROM pg_database WHERE datname = current_database()
      """;

  private static final String LIVE_REPORTS =
      """
      SELECT e.id, e.version FROM entry e
       WHERE e.kind = 'report' AND e.state = 'live'
         AND EXISTS (SELECT 1 FROM trial t WHERE t.report_id = e.id)
      """;

  /** What no constraint holds: each counts rows that lack the other half. */
  private static final Map<String, String> HALVES = new LinkedHashMap<>();

  static {
    HALVES.put(
        "entries without what their kind holds",
        """
        SELECT count(*) FROM entry e WHERE NOT CASE
          WHEN e.kind = 'report' THEN EXISTS (SELECT 1 FROM report x WHERE x.id = e.id)
          WHEN e.kind = 'photo' THEN EXISTS (SELECT 1 FROM photo x WHERE x.id = e.id)
            OR e.state <> 'live'
          WHEN e.kind IN ('question', 'answer', 'notice')
            THEN EXISTS (SELECT 1 FROM talk x WHERE x.id = e.id)
          WHEN e.kind = 'grid' THEN EXISTS (SELECT 1 FROM grid x WHERE x.id = e.id)
          WHEN e.kind = 'sample' THEN EXISTS (SELECT 1 FROM sample x WHERE x.id = e.id)
          WHEN e.kind = 'lot' THEN EXISTS (SELECT 1 FROM lot x WHERE x.id = e.id)
          WHEN e.kind = 'eyewear' THEN EXISTS (SELECT 1 FROM eyewear x WHERE x.id = e.id)
          WHEN e.kind = 'room' THEN EXISTS (SELECT 1 FROM room x WHERE x.id = e.id)
          WHEN e.kind = 'fixture' THEN EXISTS (SELECT 1 FROM fixture x WHERE x.id = e.id)
          ELSE true END
        """);
    HALVES.put(
        "entries whose present version has no history",
        """
        SELECT count(*) FROM entry e WHERE NOT EXISTS (SELECT 1 FROM entry_revision r
          WHERE r.entry_id = e.id AND r.version = e.version AND r.state = e.state)
        """);
    HALVES.put(
        "live reports without a trial",
        """
        SELECT count(*) FROM entry e WHERE e.kind = 'report' AND e.state = 'live'
          AND NOT EXISTS (SELECT 1 FROM trial t WHERE t.report_id = e.id)
        """);
    HALVES.put(
        "pictures of forms that were never sent, older than a month",
        """
        SELECT count(*) FROM parked_photo WHERE parked_at < now() - interval '1 month'
        """);
  }

  List<Finding> all() throws SQLException {
    List<Finding> all = new ArrayList<>();
    all.add(Finding.ok("database", "PostgreSQL " + one("SHOW server_version") + " answers."));
    all.add(clock());
    all.add(collation());
    all.add(checksums());
    all.add(durability());
    Finding tables = tables();
    all.add(tables);
    all.add(mark());
    if (tables.level() == Finding.Level.OK) {
      all.add(halves());
      all.add(searchIndex());
    }
    return all;
  }

  private Finding clock() throws SQLException {
    Instant before = Instant.now();
    Instant there =
        Instant.ofEpochMilli(
            Long.parseLong(
                one(
                    """
                    SELECT round(extract(epoch FROM clock_timestamp()) * 1000)::bigint
                    """)));
    Instant after = Instant.now();
    Duration off =
        there.isBefore(before)
            ? Duration.between(there, before)
            : there.isAfter(after) ? Duration.between(after, there) : Duration.ZERO;
    String said = "The clocks of server and database differ by " + off.toMillis() + " ms";
    if (off.compareTo(CLOCKS_MISLEAD) > 0) {
      return Finding.fail("clock", said + "; set both by NTP.");
    }
    return off.compareTo(CLOCKS_DIFFER) > 0
        ? Finding.warn("clock", said + "; set both by NTP.")
        : Finding.ok("clock", said + ".");
  }

  private Finding collation() throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(COLLATION)) {
      row.next();
      String written = row.getString(2);
      String actual = row.getString(3);
      if (written == null || written.equals(actual)) {
        return Finding.ok("collation", "Texts are sorted as when the indexes were made.");
      }
      return Finding.warn(
          "collation",
          "The indexes were made with collation version "
              + written
              + ", the system has "
              + actual
              + "; say REINDEX DATABASE and ALTER DATABASE "
              + row.getString(1)
              + " REFRESH COLLATION VERSION.");
    }
  }

  private Finding checksums() throws SQLException {
    return one("SHOW data_checksums").equals("on")
        ? Finding.ok("checksums", "The database notices pages that the disk has changed.")
        : Finding.warn(
            "checksums",
            "The database does not notice pages that the disk has changed; stop it and say"
                + " pg_checksums --enable.");
  }

  private Finding durability() throws SQLException {
    for (String setting : List.of("fsync", "full_page_writes", "synchronous_commit")) {
      if (one("SHOW " + setting).equals("off")) {
        return Finding.warn(
            "durability", setting + " is off: what was acknowledged can be lost in a crash.");
      }
    }
    return Finding.ok("durability", "What is acknowledged is on disk.");
  }

  private Finding tables() throws SQLException {
    int applied = SchemaVersion.appliedTo(connection);
    int known = SchemaVersion.known();
    if (applied > known) {
      return Finding.fail(
          "tables", "They are of version " + applied + ", this program knows only " + known + ".");
    }
    if (applied == 0) {
      return Finding.warn("tables", "There are none yet; the first start makes them.");
    }
    return applied == known
        ? Finding.ok("tables", "They are of version " + applied + ", as this program's.")
        : Finding.warn(
            "tables",
            "They are of version " + applied + "; the next start brings them to " + known + ".");
  }

  private Finding mark() throws SQLException {
    Optional<ClubMark> ofHome = ClubMark.inHome(home);
    try {
      if (ofHome.isPresent()) {
        ofHome.get().requireIn(connection, home);
      }
    } catch (LaunchException e) {
      return Finding.fail("club", e.getMessage());
    }
    return ofHome.isPresent()
        ? Finding.ok("club", "Home and database are of the club " + ofHome.get().club() + ".")
        : Finding.warn("club", "The home belongs to no club yet; the first start marks it.");
  }

  private Finding halves() throws SQLException {
    List<String> found = new ArrayList<>();
    for (Map.Entry<String, String> each : HALVES.entrySet()) {
      String count = one(each.getValue());
      if (!count.equals("0")) {
        found.add(count + " " + each.getKey());
      }
    }
    return found.isEmpty()
        ? Finding.ok("rows", "Every row has what belongs to it.")
        : Finding.warn("rows", "There are " + String.join(", ", found) + ".");
  }

  private Finding searchIndex() throws SQLException {
    Optional<IndexHash> stored;
    try {
      stored = StoredIndex.in(index);
    } catch (IOException | RuntimeException e) {
      return Finding.warn("index", index + " is damaged (" + e + "); the server builds it anew.");
    }
    if (stored.isEmpty()) {
      return Finding.warn("index", "There is none in " + index + "; the next start builds it.");
    }
    IndexHash wanted = IndexHash.EMPTY;
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(LIVE_REPORTS)) {
      while (rows.next()) {
        wanted = wanted.with(rows.getObject(1, UUID.class), rows.getLong(2));
      }
    }
    if (stored.get().equals(wanted)) {
      return Finding.ok("index", "It holds the " + wanted.reports() + " reports of the database.");
    }
    long held = stored.get().reports();
    String difference =
        held == wanted.reports()
            ? "On disk some of its " + held + " reports are of another version"
            : "On disk it holds " + held + " reports, the database " + wanted.reports();
    return Finding.warn(
        "index",
        difference
            + (serverMayRun
                ? "; a running server writes it down now and then: look again in some minutes."
                : "; the next start reads what is missing."));
  }

  private String one(String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }
}

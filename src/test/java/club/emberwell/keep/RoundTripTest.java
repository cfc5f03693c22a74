package club.emberwell.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.exchange.ScenarioLoader;
import club.emberwell.launch.TestServer;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A club with rows in every table is kept while its server runs, and comes back whole. */
@QuarkusTest
@TestProfile(RoundTripTest.Fresh.class)
class RoundTripTest {
  /** What a restore changes on purpose, held by {@link RestoreTest}. */
  private static final Set<String> SETTLED =
      Set.of(
          "audit",
          "backup",
          "change_row",
          "data_making",
          "data_package",
          "data_package_part",
          "erasure",
          "history_epoch",
          "once_link",
          "owner_code",
          "report_change",
          "session",
          "sso_arrival",
          "sso_state");

  /** A club of its own. */
  public static class Fresh implements io.quarkus.test.junit.QuarkusTestProfile {}

  @ConfigProperty(name = "quarkus.datasource.jdbc.url")
  String url;

  @ConfigProperty(name = "quarkus.datasource.username")
  String user;

  @ConfigProperty(name = "quarkus.datasource.password")
  String password;

  @Inject ScenarioLoader loader;
  @Inject DataSource source;

  @TempDir Path folder;

  @Test
  void everyTableComesBackAsItWas() throws Exception {
    assertTrue(loader.load("browser-scenario").asExpected());
    Map<String, String> before;
    try (Connection connection = source.getConnection()) {
      EveryTable.fill(connection);
      before = EveryTable.sums(connection);
    }
    List<String> empty = new ArrayList<>();
    before.forEach(
        (table, sum) -> {
          if (sum.startsWith("0 ")) {
            empty.add(table);
          }
        });
    assertEquals(List.of(), empty, "tables that fill.sql must give a row");

    Path key = Files.writeString(folder.resolve("key"), "a key\n");
    List<String> said = new ArrayList<>();
    DatabaseLogin club = new DatabaseLogin(url, user, password);
    Backup.Done done =
        new Backup(club, "1.0", Map.of("data-signing-key.pem", key), said::add).into(folder);
    assertTrue(
        done.file().getFileName().toString().matches("emberwell-[a-z-]+-\\d{8}T\\d{6}Z\\.zip"),
        done.file().toString());
    assertEquals(
        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(done.file())));
    assertEquals(before.keySet().stream().sorted().toList(), tables(done.manifest()));

    DatabaseLogin other = elsewhere();
    Restore restore = new Restore(other, new Restore.Wishes(false, false, List.of()), said::add);
    assertFalse(restore.isClubThere());
    try (Archive archive = Archive.open(done.file())) {
      restore.from(archive);
    }
    try (Connection connection = other.connect()) {
      Map<String, String> after = EveryTable.sums(connection);
      before.keySet().removeAll(SETTLED);
      after.keySet().removeAll(SETTLED);
      assertEquals(before, after);
      assertEquals(schema(club), schema(other));
    }
    if (Boolean.getBoolean("kept.update")) {
      Files.copy(
          done.file(),
          Path.of("src/test/resources/kept/schema-%d.zip".formatted(SchemaVersion.known())),
          StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static List<String> tables(Manifest manifest) {
    return manifest.tables().stream().map(Manifest.Table::name).sorted().toList();
  }

  private static DatabaseLogin elsewhere() {
    TestServer server = TestServer.shared();
    return new DatabaseLogin(
        server.jdbcUrl(server.freshDatabase()), "emberwell", server.password());
  }

  /**
   * Columns, keys, checks, indexes, triggers, functions and sequences, as the catalog spells them.
   */
  private static List<String> schema(DatabaseLogin database) throws Exception {
    List<String> lines = new ArrayList<>();
    try (Connection connection = database.connect();
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                """
                select 'column ' || table_name || '.' || column_name || ' ' || data_type || ' '
                       || is_nullable || ' ' || coalesce(column_default, '')
                  from information_schema.columns where table_schema = current_schema()
                union all
                select 'key ' || conrelid::regclass || ' ' || conname || ' '
                       || pg_get_constraintdef(oid)
                  from pg_constraint where connamespace = current_schema()::regnamespace
                union all
                select 'index ' || indexdef from pg_indexes where schemaname = current_schema()
                union all
                select 'trigger ' || cast(tgenabled as text) || ' ' || pg_get_triggerdef(oid)
                  from pg_trigger where not tgisinternal
                union all
                select 'function ' || pg_get_functiondef(oid)
                  from pg_proc where pronamespace = current_schema()::regnamespace
                union all
                select 'sequence ' || sequencename || ' ' || coalesce(last_value, 0)
                  from pg_sequences where schemaname = current_schema()
                   and sequencename not in ('deed', 'change_row_seq_seq', 'report_change_seq_seq')
                union all
                select 'schema ' || nspname from pg_namespace where nspname like 'emberwell%'
                order by 1
                """)) {
      while (row.next()) {
        lines.add(row.getString(1));
      }
    }
    return lines;
  }
}

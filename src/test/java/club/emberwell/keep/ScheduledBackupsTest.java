package club.emberwell.keep;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.eclipse.microprofile.health.Readiness;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The running server's own backups: when, by whom, how many stay, what is seen of them. */
@QuarkusTest
@TestProfile(ScheduledBackupsTest.TwoStay.class)
class ScheduledBackupsTest {
  private static final Path PLACE = Path.of("target", "scheduled-backups").toAbsolutePath();

  /** Two backups stay. */
  public static class TwoStay implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("emberwell.backup.dir", PLACE.toString(), "emberwell.backup.keep", "2");
    }
  }

  @Inject ScheduledBackups backups;
  @Inject @Readiness BackupWatch watch;
  @Inject DataSource source;

  private final Path folder = PLACE.resolve("scheduled");

  @BeforeEach
  void nothingYet() throws Exception {
    if (Files.isRegularFile(folder)) {
      Files.delete(folder);
    }
    Files.createDirectories(folder);
    for (Path file : files()) {
      Files.delete(file);
    }
    run(
        "update backup_making set made_at = null, file = null, size_bytes = null, failure = null,"
            + " maker = null, until = null");
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  private void run(String sql) throws SQLException {
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  @Test
  void oneADayIsMadeTheOldestGoAndItIsSeen() throws Exception {
    Path oldest = Files.createFile(folder.resolve("emberwell-zebra-20240101T000000Z.zip"));
    Path older = Files.createFile(folder.resolve("emberwell-aspen-20250101T000000Z.zip"));
    Path half = Files.createFile(folder.resolve("emberwell-a-20250101T000000Z.zip.half"));
    Path notes = Files.createFile(folder.resolve("notes.zip"));
    Path made = backups.makeIfDue(Instant.now()).orElseThrow();
    assertEquals(Stream.of(older, made, notes).sorted().toList(), files());
    assertTrue(Files.notExists(oldest) && Files.notExists(half));
    Archive.open(made).close();

    // nobody makes another one today
    assertEquals(Optional.empty(), backups.makeIfDue(Instant.now()));
    assertTrue(backups.makeIfDue(Instant.now().plus(Duration.ofDays(1))).isPresent());

    watch.look();
    long seconds = backups.madeAt().orElseThrow().getEpochSecond();
    assertTrue(Instant.now().getEpochSecond() - seconds < 600);
    given()
        .get("/q/metrics")
        .then()
        .body(containsString("emberwell_backup_last_success_timestamp_seconds"));
    given().get("/q/health/ready").then().body(containsString("\"newest\""));
  }

  @Test
  void oneNodeMakesIt() throws Exception {
    run("update backup_making set maker = gen_random_uuid(), until = now() + interval '1 hour'");
    assertEquals(Optional.empty(), backups.makeIfDue(Instant.now()));
    // that node died
    run("update backup_making set until = now() - interval '1 second'");
    assertTrue(backups.makeIfDue(Instant.now()).isPresent());
  }

  @Test
  void whatFailsIsSaidAndTriedLaterAndTheOldOnesStay() throws Exception {
    Files.delete(folder);
    Files.createFile(folder);
    assertEquals(Optional.empty(), backups.makeIfDue(Instant.now()));
    assertTrue(backups.failure().orElseThrow().contains("cannot be written"));
    watch.look();
    given().get("/q/health/ready").then().body(containsString("cannot be written"));
    Files.delete(folder);
    assertEquals(Optional.empty(), backups.makeIfDue(Instant.now()), "not within the hour");
    run("update backup_making set until = now() - interval '1 second'");
    assertTrue(backups.makeIfDue(Instant.now()).isPresent());
    assertEquals(Optional.empty(), backups.failure());
  }

  @Test
  void itIsDueOnceADay() {
    LocalTime at = LocalTime.of(2, 10);
    assertEquals(
        Instant.parse("2026-11-27T02:10:00Z"),
        ScheduledBackups.lastDue(Instant.parse("2026-11-27T02:10:00Z"), at));
    assertEquals(
        Instant.parse("2026-11-26T02:10:00Z"),
        ScheduledBackups.lastDue(Instant.parse("2026-11-27T02:09:59Z"), at));
  }
}

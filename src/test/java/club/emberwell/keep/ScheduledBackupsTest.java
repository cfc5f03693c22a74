package club.emberwell.keep;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
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
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.eclipse.microprofile.health.Readiness;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The running server's own backups: when, by whom, how many stay, what is seen of them. */
@QuarkusTest
@TestProfile(TwoStay.class)
class ScheduledBackupsTest {
  @Inject ScheduledBackups backups;
  @Inject Backups all;
  @Inject BackupWork work;
  @Inject @Readiness BackupWatch watch;
  @Inject DataSource source;

  private final Path folder = TwoStay.PLACE.resolve("scheduled");

  @BeforeEach
  void nothingYet() throws Exception {
    TwoStay.clear();
    Files.createDirectories(folder);
    run("delete from backup");
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
    Instant newest = all.overview().newest().orElseThrow().file().madeAt();
    assertTrue(Instant.now().getEpochSecond() - newest.getEpochSecond() < 600);
    given()
        .get("/q/metrics")
        .then()
        .body(containsString("emberwell_backup_last_success_timestamp_seconds"));
    given().get("/q/health/ready").then().body(containsString("\"newest\""));
  }

  @Test
  void oneNodeMakesIt() throws Exception {
    UUID elsewhere = work.claim(BackupCause.BY_HAND).orElseThrow();
    assertEquals(Optional.empty(), backups.makeIfDue(Instant.now()));
    // that node died
    run("update backup set until = now() - interval '1 second'");
    assertEquals(BackupState.DIED, all.byId(elsewhere).orElseThrow().state());
    assertTrue(all.overview().running().isEmpty());
    assertTrue(backups.makeIfDue(Instant.now()).isPresent());
    assertEquals(StoredBackups.DIED, all.byId(elsewhere).orElseThrow().failure());
  }

  @Test
  void whatFailsIsSaidAndTriedLaterAndTheOldOnesStay() throws Exception {
    Files.delete(folder);
    Files.createFile(folder);
    assertEquals(Optional.empty(), backups.makeIfDue(Instant.now()));
    String why = all.overview().failed().orElseThrow().failure();
    assertTrue(why.contains("cannot be written"), why);
    watch.look();
    given().get("/q/health/ready").then().body(containsString("cannot be written"));
    Files.delete(folder);
    assertEquals(Optional.empty(), backups.makeIfDue(Instant.now()), "not within the hour");
    run("update backup set ended_at = now() - interval '61 minutes'");
    assertTrue(backups.makeIfDue(Instant.now()).isPresent());
    assertEquals(Optional.empty(), all.overview().failed());
  }

  @Test
  void oneThatIsTooOldIsWarnedOfInHealthToo() throws Exception {
    watch.look();
    given().get("/q/health/ready").then().body(containsString("There is no backup."));
    backups.makeIfDue(Instant.now());
    watch.look();
    given().get("/q/health/ready").then().body(not(containsString("caution")));
    run("update backup set made_at = now() - interval '49 hours'");
    watch.look();
    given().get("/q/health/ready").then().body(containsString("The newest backup is 2 days old."));
  }

  @Test
  void whatLiesThereIsKnownWhoeverPutItThere() throws Exception {
    Path made = backups.makeIfDue(Instant.now()).orElseThrow();
    Path copied = folder.resolveSibling("emberwell-other-20260101T000000Z.zip");
    Files.copy(made, copied);
    Files.createFile(folder.resolveSibling("emberwell-empty-20260101T000000Z.zip"));
    all.look();
    KnownBackup found = named(copied);
    assertEquals(Files.size(copied), found.file().bytes());
    assertEquals(SchemaVersion.known(), found.file().tables());
    assertEquals(2, all.overview().kept().size(), "an empty file is no backup");
    // its size tells that it was cut
    Files.write(copied, new byte[10]);
    all.look();
    assertEquals(Trial.Outcome.DAMAGED, named(copied).trial().outcome());
    assertFalse(named(copied).isGood());
    Files.delete(copied);
    all.look();
    assertEquals(List.of(made), all.overview().kept().stream().map(k -> k.file().path()).toList());
    // one on another machine stays known for a while, but is not counted on
    run("update backup set node = 'elsewhere', path = '/x', name = 'emberwell-x.zip'");
    Files.delete(made);
    all.look();
    assertEquals(1, all.overview().kept().size());
    assertTrue(all.overview().newest().isPresent());
    run("update backup set seen_at = now() - interval '25 hours'");
    assertTrue(all.overview().newest().isEmpty());
    run("update backup set seen_at = now() - interval '31 days'");
    all.look();
    assertEquals(List.of(), all.overview().all());
  }

  private KnownBackup named(Path file) {
    return all.overview().kept().stream()
        .filter(one -> one.file().path().equals(file))
        .findFirst()
        .orElseThrow();
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

package club.emberwell.launch;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.keep.Archive;
import club.emberwell.keep.Manifest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** SIGKILL for the packaged program while it makes backups and brings one back. */
@Tag("packaged")
@Tag("slow")
class KilledWhileKeepingTest {
  private static final Path KEPT =
      Path.of("src/test/resources/kept/schema-20.zip").toAbsolutePath();
  private static final Duration PATIENCE = Duration.ofSeconds(120);

  private Path home;

  @BeforeEach
  void makeHome() throws IOException {
    home = Files.createTempDirectory("emberwell-home-");
    Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  @AfterEach
  void end() throws Exception {
    Path data = home.resolve("postgres/data");
    if (Files.exists(data)) {
      Postmaster.runningOn(data)
          .flatMap(server -> ProcessHandle.of(server.pid()))
          .ifPresent(ProcessHandle::destroyForcibly);
    }
    PostgresBinaries.deleteTree(home);
  }

  private PackagedProgram run(String... words) throws Exception {
    PackagedProgram program = PackagedProgram.start(home, Map.of(), words);
    assertEquals(0, program.awaitEnd(), program.output());
    return program;
  }

  private void killAt(String said, String... words) throws Exception {
    PackagedProgram program = PackagedProgram.start(home, Map.of(), words);
    await()
        .atMost(PATIENCE)
        .pollInterval(Duration.ofMillis(2))
        .until(
            () -> !program.process.isAlive() || program.output().matches("(?s).*" + said + ".*"));
    program.process.destroyForcibly().waitFor();
  }

  /** What is in the database now. */
  private List<Manifest.Table> tables() throws Exception {
    Path file = Files.createTempFile(home, "now", ".zip");
    run("backup", file.toString());
    try (Archive archive = Archive.open(file)) {
      return archive.manifest().tables();
    }
  }

  @Test
  void thereIsTheOldClubAndNoHalfBackup() throws Exception {
    run("restore", KEPT.toString());
    List<Manifest.Table> before = tables();
    killAt("Kept in .*report:.*", "restore", KEPT.toString(), "--replace");
    assertEquals(before, tables());

    for (String table : List.of("api_token", "entry", "webhook")) {
      killAt(table + ":", "backup");
    }
    List<Path> whole = new ArrayList<>();
    try (Stream<Path> files = Files.list(home.resolve("backups"))) {
      files.filter(file -> file.toString().endsWith(".zip")).forEach(whole::add);
    }
    // the one made before the restore, and any that was done before it was killed
    assertTrue(!whole.isEmpty());
    for (Path file : whole) {
      Archive.open(file).close();
    }
    run("restore", KEPT.toString(), "--replace");
    run("verify", whole.get(0).toString());
  }
}

package club.emberwell.keep;

import static club.emberwell.keep.KeptArchives.newest;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import club.emberwell.keep.KeepRefused.Why;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is damaged, cut off or of a newer program is refused before anything is touched. */
class ArchiveTest {
  @TempDir Path folder;

  private static Map<String, byte[]> members() throws IOException {
    Map<String, byte[]> members = new LinkedHashMap<>();
    try (ZipFile zip = new ZipFile(newest().toFile())) {
      for (ZipEntry entry : zip.stream().map(ZipEntry.class::cast).toList()) {
        members.put(entry.getName(), zip.getInputStream(entry).readAllBytes());
      }
    }
    return members;
  }

  private Path zip(Map<String, byte[]> members) throws IOException {
    Path file = folder.resolve("changed.zip");
    try (OutputStream out = Files.newOutputStream(file);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> member : members.entrySet()) {
        zip.putNextEntry(new ZipEntry(member.getKey()));
        zip.write(member.getValue());
      }
    }
    return file;
  }

  private static KeepRefused refused(Path file) {
    return assertThrows(KeepRefused.class, () -> Archive.open(file).close());
  }

  @Test
  void theSumsAreThoseThatSha256sumReads() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/sha256sum")), "no sha256sum here");
    for (Map.Entry<String, byte[]> member : members().entrySet()) {
      Path file = folder.resolve(member.getKey());
      Files.createDirectories(file.getParent());
      Files.write(file, member.getValue());
    }
    Process sums =
        new ProcessBuilder("sha256sum", "--strict", "-c", "SHA256SUMS")
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .start();
    String said = new String(sums.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, sums.waitFor(), said);
    assertEquals(members().size() - 1, said.lines().count());
  }

  @Test
  void aChangedOrMissingMemberIsNamed() throws Exception {
    for (String name : members().keySet()) {
      Map<String, byte[]> members = members();
      byte[] bytes = members.get(name);
      members.put(name, Arrays.copyOf(bytes, bytes.length + 1));
      KeepRefused said = refused(zip(members));
      assertEquals(Why.DAMAGED, said.why());
      assertTrue(said.getMessage().contains("is damaged ("), said.getMessage());
      members.remove(name);
      assertEquals(Why.DAMAGED, refused(zip(members)).why());
    }
    Map<String, byte[]> members = members();
    members.put("tables/more.copy", new byte[0]);
    assertEquals(Why.DAMAGED, refused(zip(members)).why());
  }

  @Test
  void whereverItIsCutOffOrABitIsTurnedItIsRefusedOrStillRight() throws Exception {
    byte[] whole = Files.readAllBytes(newest());
    Random random = new Random(12);
    Path file = folder.resolve("turned.zip");
    int refused = 0;
    for (int i = 0; i < 150; i++) {
      byte[] turned = whole.clone();
      turned[random.nextInt(whole.length)] ^= (byte) (1 << random.nextInt(8));
      Files.write(file, turned);
      try {
        // the time of a member, for example, is nothing that counts
        Archive.open(file).close();
      } catch (KeepRefused e) {
        assertTrue(e.why() == Why.DAMAGED || e.why() == Why.NEWER, e.getMessage());
        refused++;
      }
    }
    assertTrue(refused > 120, refused + " of 150 were refused");
    for (int i = 0; i < 30; i++) {
      Files.write(file, Arrays.copyOf(whole, random.nextInt(whole.length)));
      assertEquals(Why.DAMAGED, refused(file).why());
    }
    Files.write(file, new byte[0]);
    assertEquals(Why.DAMAGED, refused(file).why());
    assertEquals(Why.FILE, refused(folder.resolve("nowhere.zip")).why());
  }

  @Test
  void anArchiveOfANewerProgramIsRefused() throws Exception {
    Map<String, byte[]> members = members();
    String manifest = new String(members.get("manifest.json"), StandardCharsets.UTF_8);
    Path ofAnotherFormat = resealed(manifest.replace("\"format\" : 1", "\"format\" : 2"));
    assertEquals(Why.NEWER, refused(ofAnotherFormat).why());

    Path newerTables = resealed(manifest.replaceAll("\"schema\" : \\d+", "\"schema\" : 999"));
    try (Archive archive = Archive.open(newerTables)) {
      DatabaseLogin database = KeptArchives.restored();
      Restore restore = new Restore(database, KeptArchives.PLAIN, line -> {});
      KeepRefused said = assertThrows(KeepRefused.class, () -> restore.from(archive));
      assertEquals(Why.NEWER, said.why());
      assertTrue(said.getMessage().contains("nothing was changed"), said.getMessage());
    }
  }

  /** As that program would have written it. */
  private Path resealed(String manifest) throws IOException {
    Map<String, byte[]> members = members();
    members.put("manifest.json", manifest.getBytes(StandardCharsets.UTF_8));
    StringBuilder sums = new StringBuilder();
    members.forEach(
        (name, bytes) -> {
          if (!name.equals("SHA256SUMS")) {
            sums.append(DigestUtils.sha256Hex(bytes)).append("  ").append(name).append('\n');
          }
        });
    members.put("SHA256SUMS", sums.toString().getBytes(StandardCharsets.UTF_8));
    return zip(members);
  }

  @Test
  void rowsThatAreNotWhatTheManifestSaysAreNotTaken() throws Exception {
    Map<String, byte[]> members = members();
    String manifest = new String(members.get("manifest.json"), StandardCharsets.UTF_8);
    Path file = resealed(manifest.replaceFirst("\"rows\" : \\d+", "\"rows\" : 987654"));
    DatabaseLogin database = KeptArchives.restored();
    try (Archive archive = Archive.open(file)) {
      Restore restore = new Restore(database, KeptArchives.PLAIN, line -> {});
      KeepRefused said = assertThrows(KeepRefused.class, () -> restore.from(archive));
      assertEquals(Why.DIFFERS, said.why());
    }
  }

  @Test
  void theNameTellsClubAndTime() {
    Instant at = Instant.parse("2026-11-27T03:26:01Z");
    assertEquals(
        List.of(
            "emberwell-the-quillmarsh-laser-circle-20261127T032601Z.zip",
            "emberwell-etudes-no-3-20261127T032601Z.zip",
            "emberwell-club-20261127T032601Z.zip"),
        List.of(
            Backup.name("The Quillmarsh Laser Circle", at),
            Backup.name("  Études, no. 3!", at),
            Backup.name("木工", at)));
  }
}

package club.emberwell.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who left, beside the database. */
class ErasedFileTest {
  private static final Erased ONE =
      new Erased(UUID.randomUUID(), "keep", Instant.parse("2026-11-27T03:26:01.123456Z"));
  private static final Erased OTHER = new Erased(UUID.randomUUID(), "remove", Instant.EPOCH);

  @TempDir Path home;

  @Test
  void eachIsThereOnceAndHalfALineHarmsNobody() throws Exception {
    ErasedFile file = ErasedFile.of(home);
    assertEquals(List.of(), file.all());
    assertEquals(1, file.add(List.of(ONE)));
    assertEquals(
        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file.file())));
    // as a machine leaves it that lost its power
    Files.writeString(file.file(), "\n{\"member\":\"" + OTHER.member(), StandardOpenOption.APPEND);
    assertEquals(List.of(ONE), file.all());
    assertEquals(1, file.add(List.of(ONE, OTHER)));
    assertEquals(List.of(ONE, OTHER), file.all());
    assertEquals(0, file.add(List.of(OTHER, ONE)));
  }
}

package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HomeTest {
  @TempDir Path folder;

  private static String mode(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }

  private static void open(Path path) throws IOException {
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  @Test
  void aNewHomeAndItsLockAreTheOwnersAlone() throws IOException {
    Path home = folder.resolve("new/home");
    try (Home taken = Home.take(home)) {
      assertEquals("rwx------", mode(taken.folder()));
      assertEquals("rw-------", mode(home.resolve("lock")));
    }
  }

  @Test
  void anOlderHomeThatIsOpenToOthersIsNarrowed() throws IOException {
    open(folder);
    Files.createFile(folder.resolve("lock"));
    Files.createDirectory(folder.resolve("index"));
    Home.take(folder).close();
    assertEquals("rwx------", mode(folder));
  }

  @Test
  void anEmptyFolderAndOneWithSettingsAreNarrowedToo() throws IOException {
    open(folder);
    Files.createFile(folder.resolve("emberwell.properties"));
    Home.take(folder).close();
    assertEquals("rwx------", mode(folder));
  }

  @Test
  void aFolderOfOtherThingsStaysAsItIs() throws IOException {
    open(folder);
    Files.createFile(folder.resolve("somebody's letter"));
    Home.take(folder).close();
    assertEquals("rwxr-xr-x", mode(folder));
  }

  @Test
  void aFolderForAllSuchAsTmpStaysAsItIs() throws Exception {
    // as stat(2) has it: sticky, written by all
    assertEquals(0, new ProcessBuilder("chmod", "1777", folder.toString()).start().waitFor());
    Home.take(folder).close();
    assertEquals("rwxrwxrwx", mode(folder));
  }

  @Test
  void aHomeIsHeldByOneAtATime() throws IOException {
    try (Home first = Home.take(folder)) {
      LaunchException refused = assertThrows(LaunchException.class, () -> Home.take(folder));
      assertEquals(ExitCode.HOME_IN_USE, refused.exitCode());
      assertEquals(folder.toRealPath(), first.folder());
    }
    Home.take(folder).close();
  }
}

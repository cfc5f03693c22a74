package club.emberwell.launch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** What can be seen of a home: who may look into it, and how much room there is. */
record HomeFindings(Path home) {
  /** Below, a database of a club cannot write its log for long. */
  private static final long ROOM_FOR_HOURS = 256L << 20;

  /** Below, one more rebuild of the index or one upgrade may fill the disk. */
  private static final long ROOM_FOR_WEEKS = 2L << 30;

  private static final long MEGABYTE = 1L << 20;

  /** Of the home, and of what in it holds a secret. */
  private static final List<String> SECRETS =
      List.of("emberwell.properties", "data-signing-key.pem", "postgres/password");

  private static final Set<PosixFilePermission> OF_OTHERS =
      PosixFilePermissions.fromString("---rwxrwx");

  List<Finding> all() {
    if (!Files.isDirectory(home)) {
      return List.of(Finding.warn("home", home + " is not there yet; the first start makes it."));
    }
    List<Finding> all = new ArrayList<>();
    try {
      all.add(permissions());
      all.add(room("disk of home", home));
      Path data = home.resolve(PostgresData.FOLDER).resolve("data");
      if (Files.isDirectory(data)) {
        all.add(room("disk of data", data));
      }
    } catch (IOException e) {
      all.add(Finding.fail("home", home + " cannot be looked at: " + e + "."));
    }
    return all;
  }

  private Finding permissions() throws IOException {
    Set<PosixFilePermission> given = Files.getPosixFilePermissions(home);
    boolean through =
        given.equals(PosixFilePermissions.fromString("rwx--x--x")) && Account.isRoot();
    if (!through && given.stream().anyMatch(OF_OTHERS::contains)) {
      return Finding.warn(
          "home",
          home
              + " is open to others ("
              + PosixFilePermissions.toString(given)
              + "); the next start closes it, or say chmod 700.");
    }
    for (String name : SECRETS) {
      Path file = home.resolve(name);
      if (Files.exists(file)
          && Files.getPosixFilePermissions(file).stream().anyMatch(OF_OTHERS::contains)) {
        return Finding.warn("home", file + " can be read by others; say chmod 600.");
      }
    }
    return Finding.ok("home", home + " is its owner's alone.");
  }

  private static Finding room(String what, Path folder) throws IOException {
    long free = Files.getFileStore(folder).getUsableSpace();
    String said = free / MEGABYTE + " MB are free for " + folder;
    if (free < ROOM_FOR_HOURS) {
      return Finding.fail(what, said + "; make room now, writes will fail.");
    }
    return free < ROOM_FOR_WEEKS
        ? Finding.warn(what, said + "; make room soon.")
        : Finding.ok(what, said + ".");
  }
}

package club.emberwell.launch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A database server found running on a data folder: its process id and its TCP port. */
record Postmaster(long pid, int port) {

  /** The server that {@code postmaster.pid} names, if it truly runs and serves this folder. */
  static Optional<Postmaster> runningOn(Path data) throws IOException {
    Path file = data.resolve("postmaster.pid");
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    if (lines.size() < 4) {
      return Optional.empty();
    }
    try {
      Postmaster found =
          new Postmaster(
              Long.parseLong(lines.get(0).trim()), Integer.parseInt(lines.get(3).trim()));
      return found.serves(data) ? Optional.of(found) : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** Removes a lock file whose process is gone, a zombie, or something else by now. */
  static void clearStaleLock(Path data) throws IOException {
    if (runningOn(data).isEmpty()) {
      Files.deleteIfExists(data.resolve("postmaster.pid"));
    }
  }

  /** Whether the process lives, is no zombie, and was started for this folder. */
  boolean serves(Path data) {
    Path proc = Path.of("/proc", Long.toString(pid));
    try {
      String stat = Files.readString(proc.resolve("stat"), StandardCharsets.ISO_8859_1);
      // the name in brackets may hold anything, so look behind the last bracket
      char state = stat.charAt(stat.lastIndexOf(')') + 2);
      String command = Files.readString(proc.resolve("cmdline"), StandardCharsets.UTF_8);
      List<String> words = List.of(command.split("\0"));
      return state != 'Z' && state != 'X' && words.contains(data.toString());
    } catch (IOException | StringIndexOutOfBoundsException e) {
      return false;
    }
  }
}

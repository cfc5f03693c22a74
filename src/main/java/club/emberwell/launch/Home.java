package club.emberwell.launch;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/** The folder of one server, held by one process at a time. */
final class Home implements AutoCloseable {
  private final Path folder;
  private final FileChannel lock;

  private Home(Path folder, FileChannel lock) {
    this.folder = folder;
    this.lock = lock;
  }

  /**
   * Takes the folder for this process, made if it is not there.
   *
   * @throws LaunchException when another process holds it or it cannot be written
   */
  static Home take(Path wanted) {
    try {
      if (!Files.isDirectory(wanted)) {
        Files.createDirectories(wanted);
        Files.setPosixFilePermissions(wanted, PosixFilePermissions.fromString("rwx--x--x"));
      }
      Path folder = wanted.toRealPath();
      FileChannel channel =
          FileChannel.open(
              folder.resolve("lock"),
              StandardOpenOption.CREATE,
              StandardOpenOption.READ,
              StandardOpenOption.WRITE);
      requireLock(channel, folder);
      channel.truncate(0);
      String pid = Long.toString(ProcessHandle.current().pid());
      channel.write(ByteBuffer.wrap(pid.getBytes(StandardCharsets.US_ASCII)));
      return new Home(folder, channel);
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING,
          "The home " + wanted + " cannot be used (" + e + "); choose another with --home.",
          e);
    }
  }

  private static void requireLock(FileChannel channel, Path folder) throws IOException {
    boolean held;
    try {
      held = channel.tryLock() == null;
    } catch (OverlappingFileLockException e) {
      held = true;
    }
    if (held) {
      ByteBuffer holder = ByteBuffer.allocate(32);
      channel.read(holder, 0);
      String pid = new String(holder.array(), 0, holder.position(), StandardCharsets.US_ASCII);
      channel.close();
      throw new LaunchException(
          ExitCode.HOME_IN_USE,
          "Another server (process "
              + pid
              + ") is running on the home "
              + folder
              + "; stop it or choose another home with --home.");
    }
  }

  /** The folder itself, absolute. */
  Path folder() {
    return folder;
  }

  @Override
  public void close() throws IOException {
    lock.close();
  }
}

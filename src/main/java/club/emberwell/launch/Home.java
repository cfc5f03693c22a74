package club.emberwell.launch;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/** The folder of one server, held by one process at a time. */
final class Home implements AutoCloseable {
  private static final Logger LOG = Logger.getLogger(Home.class);
  private static final Set<PosixFilePermission> OWNER_ALONE =
      PosixFilePermissions.fromString("rwx------");
  private static final String LOCK = "lock";

  /** As stat(2) has it: only their owners may remove files of a folder for all. */
  private static final int STICKY = 01000;

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
        Files.setPosixFilePermissions(wanted, OWNER_ALONE);
      }
      Path folder = wanted.toRealPath();
      boolean ours = isOurs(folder);
      FileChannel channel =
          FileChannel.open(
              folder.resolve(LOCK),
              Set.of(StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE),
              PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
      requireLock(channel, folder);
      channel.truncate(0);
      String pid = Long.toString(ProcessHandle.current().pid());
      channel.write(ByteBuffer.wrap(pid.getBytes(StandardCharsets.US_ASCII)));
      if (ours) {
        narrow(folder);
      }
      return new Home(folder, channel);
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.WRONG_SETTING,
          "The home " + wanted + " cannot be used (" + e + "); choose another with --home.",
          e);
    }
  }

  /** Not {@code /tmp} or the like: a folder that holds other things stays as it is. */
  private static boolean isOurs(Path folder) throws IOException {
    if (((int) Files.getAttribute(folder, "unix:mode") & STICKY) != 0) {
      return false;
    }
    try (Stream<Path> children = Files.list(folder)) {
      Set<String> names =
          children.map(child -> child.getFileName().toString()).collect(Collectors.toSet());
      names.remove("emberwell.properties");
      return names.isEmpty() || names.contains(LOCK);
    }
  }

  /** Takes from others what an older version, or whoever made the folder, let them. */
  private static void narrow(Path folder) throws IOException {
    Set<PosixFilePermission> wide = Files.getPosixFilePermissions(folder);
    if (OWNER_ALONE.containsAll(wide)) {
      return;
    }
    try {
      Files.setPosixFilePermissions(folder, OWNER_ALONE);
      LOG.infof(
          "The home %s was open to others (%s) and is its owner's alone now",
          folder, PosixFilePermissions.toString(wide));
    } catch (FileSystemException e) {
      // a volume that belongs to somebody else, as containers have them
      LOG.warnf(
          "The home %s is open to others (%s) and is not ours to close",
          folder, PosixFilePermissions.toString(wide));
    }
  }

  /**
   * Lets other accounts through to what they own below: where root has the account nobody run the
   * built-in database, it must reach its folder. They see no names.
   */
  private void letThrough() throws IOException {
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx--x--x"));
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

  /** Starts, or adopts, the built-in database. */
  EmbeddedPostgres postgres() {
    Account account = Account.current();
    try {
      if (account.ownsOtherFiles()) {
        letThrough();
      }
    } catch (IOException e) {
      throw new LaunchException(ExitCode.NO_DATABASE, "The home " + folder + ": " + e, e);
    }
    Path own = folder.resolve(PostgresData.FOLDER);
    requireOwn(own.resolve("data"));
    return EmbeddedPostgres.start(own, own, PostgresSettings.durable(), account);
  }

  /** Root would run it for itself, and its owner could not use it any more. */
  private static void requireOwn(Path data) {
    try {
      if (!Files.exists(data) || !Account.isRoot() || Account.isRoots(data)) {
        return;
      }
      String owner = Files.getOwner(data).getName();
      throw new LaunchException(
          ExitCode.WRONG_SETTING,
          "The database in "
              + data
              + " belongs to the account "
              + owner
              + "; run this as that account: sudo -u "
              + owner
              + " emberwell ...");
    } catch (IOException e) {
      throw new LaunchException(ExitCode.NO_DATABASE, data + " cannot be looked at: " + e, e);
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

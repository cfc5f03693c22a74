package club.emberwell.launch;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Set;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;

/** Unpacks the PostgreSQL programs that travel in the jar, once per version. */
final class PostgresBinaries {
  private PostgresBinaries() {}

  /**
   * The folder with {@code bin}, {@code lib} and {@code share}, unpacked if it is not there yet.
   */
  static Path unpackedIn(Path cache) {
    String archive = archiveName();
    try {
      // named by content, so that an upgraded jar never runs the old programs
      Path target = cache.resolve("programs-" + digest(archive));
      if (!Files.isDirectory(target)) {
        unpack(archive, cache, target);
      }
      return target;
    } catch (IOException e) {
      throw new LaunchException(
          ExitCode.FAILED, "The database programs cannot be unpacked into " + cache + ": " + e, e);
    }
  }

  /** Where one of the unpacked programs is. */
  static String program(Path programs, String name) {
    return programs.resolve("bin").resolve(name).toString();
  }

  private static String archiveName() {
    String arch = System.getProperty("os.arch").toLowerCase(Locale.ROOT);
    boolean linux = System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("linux");
    if (linux && (arch.equals("amd64") || arch.equals("x86_64"))) {
      return "postgres-linux-x86_64.txz";
    }
    if (linux && arch.equals("aarch64")) {
      return "postgres-linux-arm_64.txz";
    }
    throw new LaunchException(
        ExitCode.NO_DATABASE,
        "There is no built-in database for this kind of machine; set EMBERWELL_DATABASE_URL to a"
            + " PostgreSQL 15 or newer.");
  }

  private static InputStream open(String archive) throws IOException {
    InputStream in = PostgresBinaries.class.getClassLoader().getResourceAsStream(archive);
    if (in == null) {
      throw new IOException(archive + " is missing from the program");
    }
    return in;
  }

  private static String digest(String archive) throws IOException {
    try (DigestInputStream in =
        new DigestInputStream(open(archive), MessageDigest.getInstance("SHA-256"))) {
      in.transferTo(java.io.OutputStream.nullOutputStream());
      return HexFormat.of().formatHex(in.getMessageDigest().digest(), 0, 6);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void unpack(String archive, Path cache, Path target) throws IOException {
    Files.createDirectories(cache);
    Path half = Files.createTempDirectory(cache, "unpacking-");
    Files.setPosixFilePermissions(half, PosixFilePermissions.fromString("rwxr-xr-x"));
    try (TarArchiveInputStream tar =
        new TarArchiveInputStream(
            new XZCompressorInputStream(new BufferedInputStream(open(archive))))) {
      for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
        unpack(tar, entry, half);
      }
    }
    try {
      Files.move(half, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      deleteTree(half);
      if (!Files.isDirectory(target)) {
        throw e;
      }
    }
  }

  private static void unpack(TarArchiveInputStream tar, TarArchiveEntry entry, Path into)
      throws IOException {
    Path path = into.resolve(entry.getName()).normalize();
    if (!path.startsWith(into)) {
      throw new IOException("an entry leaves the folder: " + entry.getName());
    }
    if (entry.isDirectory()) {
      makeFolders(into, path);
      return;
    }
    makeFolders(into, path.getParent());
    if (entry.isSymbolicLink()) {
      Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
      return;
    }
    Files.copy(tar, path);
    Set<PosixFilePermission> permissions =
        PosixFilePermissions.fromString((entry.getMode() & 0100) != 0 ? "rwxr-xr-x" : "rw-r--r--");
    Files.setPosixFilePermissions(path, permissions);
  }

  /** For all to read, whatever the umask is: the database may run under another account. */
  private static void makeFolders(Path into, Path folder) throws IOException {
    if (folder.equals(into) || Files.isDirectory(folder)) {
      return;
    }
    makeFolders(into, folder.getParent());
    Files.createDirectory(folder);
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  /** Deletes a folder and all in it. */
  static void deleteTree(Path root) throws IOException {
    Files.walkFileTree(
        root,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attrs)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path dir, IOException e) throws IOException {
            Files.delete(dir);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}

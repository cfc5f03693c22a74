package club.emberwell.keep;

import club.emberwell.keep.KnownBackup.ArchiveFile;
import club.emberwell.remark.Coded;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.smallrye.common.net.HostName;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/** Where this node keeps backups, and which lie there. */
@ApplicationScoped
class BackupFolders {
  private static final Logger LOG = Logger.getLogger(BackupFolders.class);

  private final BackupSettings settings;
  private final StoredBackups rows;
  private final String node = HostName.getHostName();

  BackupFolders(BackupSettings settings, StoredBackups rows) {
    this.settings = settings;
    this.rows = rows;
  }

  /** What this machine is called. */
  String node() {
    return node;
  }

  /** Where one is put; the verbs and starts put theirs into the one that holds the others. */
  Path folder(BackupCause cause) {
    return switch (cause) {
      case SCHEDULE -> settings.dir().resolve("scheduled");
      case BY_HAND -> settings.dir().resolve("by-hand");
      case BEFORE_UPGRADE -> settings.dir();
    };
  }

  /** Looks which lie here: those that are new become known, those that are gone are forgotten. */
  void look() throws IOException {
    Instant now = Instant.now();
    List<Path> files = files();
    List<String> names = files.stream().map(BackupFolders::name).toList();
    if (!names.isEmpty()) {
      Set<String> known = QuarkusTransaction.requiringNew().call(() -> rows.known(names));
      for (Path file : files) {
        if (!known.contains(name(file))) {
          found(file, now);
        }
      }
    }
    List<Long> sizes = new ArrayList<>();
    for (Path file : files) {
      sizes.add(Files.size(file));
    }
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              rows.seen(
                  node,
                  names.toArray(String[]::new),
                  files.stream().map(Path::toString).toArray(String[]::new),
                  sizes.toArray(Long[]::new),
                  now);
              rows.forget(node, settings.dir(), now);
            });
  }

  private List<Path> files() throws IOException {
    List<Path> found = new ArrayList<>();
    for (BackupCause cause : BackupCause.values()) {
      found.addAll(archives(folder(cause)));
    }
    return found;
  }

  private static List<Path> archives(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> Backup.isName(name(file))).sorted().toList();
    }
  }

  private void found(Path file, Instant now) {
    try {
      Manifest manifest = Archive.manifest(file);
      ArchiveFile archive = archive(file, manifest, now);
      BackupCause cause = cause(file, manifest);
      QuarkusTransaction.requiringNew().run(() -> rows.found(cause, node, archive));
    } catch (IOException | KeepRefused e) {
      LOG.warnf("%s is called as a backup, but cannot be read: %s", file, e.getMessage());
    }
  }

  private BackupCause cause(Path file, Manifest manifest) {
    BackupCause said =
        Coded.of(BackupCause.class, String.valueOf(manifest.made().cause()))
            .orElse(BackupCause.BY_HAND);
    return file.startsWith(folder(BackupCause.SCHEDULE)) ? BackupCause.SCHEDULE : said;
  }

  /** A file as it is now. */
  static ArchiveFile archive(Path file, Manifest manifest, Instant now) throws IOException {
    return new ArchiveFile(
        name(file),
        file,
        Files.size(file),
        manifest.at(),
        manifest.made().program(),
        manifest.made().schema(),
        now);
  }

  private static String name(Path file) {
    return file.getFileName().toString();
  }

  /** Drops all but the newest ones, by the time in their names, and what was never finished. */
  static void dropOldest(Path folder, int keep) throws IOException {
    List<Path> newestFirst =
        archives(folder).stream().sorted(Comparator.comparing(Backup::time).reversed()).toList();
    for (Path old :
        newestFirst.subList(Math.min(Math.max(keep, 1), newestFirst.size()), newestFirst.size())) {
      Files.delete(old);
    }
    try (Stream<Path> files = Files.list(folder)) {
      for (Path half : files.filter(file -> file.toString().endsWith(".half")).toList()) {
        Files.delete(half);
      }
    }
  }
}

package club.emberwell.exchange.open;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * This node's copy of the newest package, as files to be sent: fetched when somebody asks for one,
 * each whole or not at all, and swept away once there is a newer package or none.
 */
@ApplicationScoped
public class PackageShelf {
  private static final String MAKING = "making-";
  private static final Logger LOG = Logger.getLogger(PackageShelf.class);

  private final DataPackageRepository rows;
  private final Path root;

  PackageShelf(DataPackageRepository rows, @ConfigProperty(name = "emberwell.data.dir") Path root) {
    this.rows = rows;
    this.root = root;
  }

  /** A file on this node; empty where the package was taken back just now. */
  public Optional<Path> file(DataPackage made, DataFile wanted) {
    Path folder = root.resolve(made.id().toString());
    Path file = folder.resolve(wanted.name());
    if (Files.exists(file)) {
      return Optional.of(file);
    }
    try {
      return fetched(made, wanted, folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** An empty folder to make a package in; swept away if whoever made it died. */
  Path workplace(UUID turn) throws IOException {
    return Files.createDirectories(root.resolve(MAKING + turn));
  }

  private synchronized Optional<Path> fetched(DataPackage made, DataFile wanted, Path folder)
      throws IOException {
    Files.createDirectories(folder);
    Path zip = folder.resolve(made.zip().name());
    if (!Files.exists(zip) && !whole(zip, out -> parts(made.id(), out), made.zip())) {
      return Optional.empty();
    }
    Path file = folder.resolve(wanted.name());
    if (!Files.exists(file)) {
      try (ZipFile packed = ZipFile.builder().setPath(zip).get();
          InputStream in = packed.getInputStream(packed.getEntry(wanted.name()))) {
        whole(file, in::transferTo, wanted);
      }
    }
    return Optional.of(file);
  }

  /** Writes something. */
  private interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /** Puts a file in its place once all of it is there; false where less came than there should. */
  private static boolean whole(Path file, Content content, DataFile wanted) throws IOException {
    Path growing = Files.createTempFile(file.getParent(), wanted.name(), ".part");
    try {
      try (OutputStream out = Files.newOutputStream(growing)) {
        content.writeTo(out);
      }
      if (Files.size(growing) != wanted.bytes()) {
        return false;
      }
      Files.move(growing, file, StandardCopyOption.ATOMIC_MOVE);
      return true;
    } finally {
      Files.deleteIfExists(growing);
    }
  }

  private void parts(UUID id, OutputStream out) throws IOException {
    int position = 0;
    Optional<byte[]> part = part(id, position);
    while (part.isPresent()) {
      out.write(part.get());
      part = part(id, ++position);
    }
  }

  private Optional<byte[]> part(UUID id, int position) {
    return QuarkusTransaction.requiringNew().call(() -> rows.part(id, position));
  }

  /** What is sent at this moment is sent to its end: the system keeps open files. */
  @Scheduled(every = "${emberwell.data.every}", delayed = "40s")
  void sweep() {
    if (!Files.isDirectory(root)) {
      return;
    }
    String kept =
        QuarkusTransaction.requiringNew()
            .call(rows::newest)
            .map(made -> made.id().toString())
            .orElse("");
    try (Stream<Path> folders = Files.list(root)) {
      List<Path> old = folders.filter(folder -> isOver(folder, kept)).toList();
      for (Path folder : old) {
        remove(folder);
      }
    } catch (IOException | UncheckedIOException e) {
      LOG.warnf("Old data stay in %s (%s)", root, e.getMessage());
    }
  }

  private static boolean isOver(Path folder, String kept) {
    String name = folder.getFileName().toString();
    return name.startsWith(MAKING)
        ? folder.toFile().lastModified() + PackageMaker.MOST.toMillis() < System.currentTimeMillis()
        : !name.equals(kept);
  }

  static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}

package club.emberwell.keep;

import club.emberwell.keep.KeepRefused.Why;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.commons.codec.digest.DigestUtils;

/** An archive that was opened; its members are read only after all of its sums were right. */
public final class Archive implements AutoCloseable {
  /** No list of tables comes near. */
  private static final int MOST_OF_A_LIST = 16 << 20;

  private final Path file;
  private final ZipFile zip;
  private final Manifest manifest;

  private Archive(Path file, ZipFile zip, Manifest manifest) {
    this.file = file;
    this.zip = zip;
    this.manifest = manifest;
  }

  /**
   * Opens an archive and checks every sum in it.
   *
   * @throws KeepRefused where a byte of it is wrong or missing, or where it is newer than this
   *     program
   */
  public static Archive open(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new KeepRefused(Why.FILE, "There is no backup " + file + ".");
    }
    ZipFile zip = null;
    try {
      zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
      Archive archive = new Archive(file, zip, manifest(file, zip));
      archive.check();
      return archive;
    } catch (IOException | IllegalArgumentException e) {
      close(zip);
      throw damaged(file, "it cannot be read: " + e.getMessage(), e);
    } catch (KeepRefused e) {
      close(zip);
      throw e;
    }
  }

  /**
   * What an archive says of itself, without a look at the rest of it.
   *
   * @throws IOException where it cannot be read
   * @throws KeepRefused where it is none of ours, or newer than this program
   */
  static Manifest manifest(Path file) throws IOException {
    try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8)) {
      return manifest(file, zip);
    }
  }

  private static void close(ZipFile zip) {
    try {
      if (zip != null) {
        zip.close();
      }
    } catch (IOException e) {
      // it was only read, and is refused for something else
    }
  }

  /** What it says of itself. */
  public Manifest manifest() {
    return manifest;
  }

  /** Where it lies. */
  public Path file() {
    return file;
  }

  InputStream open(Manifest.Table table) throws IOException {
    return zip.getInputStream(zip.getEntry(table.member()));
  }

  InputStream open(Manifest.HomeFile kept) throws IOException {
    return zip.getInputStream(zip.getEntry(kept.member()));
  }

  private static Manifest manifest(Path file, ZipFile zip) throws IOException {
    byte[] bytes = list(file, zip, Manifest.NAME);
    int format = Manifest.formatOf(bytes);
    if (format > Manifest.FORMAT) {
      throw new KeepRefused(
          Why.NEWER,
          "The backup %s is of format %d, this program knows only format %d: use a newer program."
              .formatted(file, format, Manifest.FORMAT));
    }
    if (format < 1) {
      throw damaged(file, "its " + Manifest.NAME + " names no format", null);
    }
    return Manifest.of(bytes);
  }

  private void check() throws IOException {
    Map<String, String> sums = sums();
    Set<String> members =
        zip.stream().map(ZipEntry::getName).collect(Collectors.toCollection(TreeSet::new));
    members.remove(ArchiveWriter.SUMS);
    if (!members.equals(new TreeSet<>(sums.keySet())) || zip.size() != members.size() + 1) {
      throw damaged(file, "its members are not those that " + ArchiveWriter.SUMS + " names", null);
    }
    for (Map.Entry<String, String> sum : sums.entrySet()) {
      checkMember(sum.getKey(), sum.getValue());
    }
    for (Manifest.Table table : manifest.tables()) {
      checkListed(table.member(), table.sha256().equals(sums.get(table.member())));
    }
    for (Manifest.HomeFile kept : manifest.files()) {
      checkListed(kept.member(), kept.sha256().equals(sums.get(kept.member())));
    }
  }

  private void checkMember(String name, String sum) {
    try (InputStream in = zip.getInputStream(zip.getEntry(name))) {
      checkListed(name, DigestUtils.sha256Hex(in).equals(sum));
    } catch (IOException e) {
      throw damaged(file, name + " cannot be read: " + e.getMessage(), e);
    }
  }

  private void checkListed(String name, boolean right) {
    if (!right) {
      throw damaged(file, "the sum of " + name + " is wrong", null);
    }
  }

  private Map<String, String> sums() throws IOException {
    Map<String, String> sums = new LinkedHashMap<>();
    String lines = new String(list(file, zip, ArchiveWriter.SUMS), StandardCharsets.UTF_8);
    for (String line : lines.split("\n")) {
      String[] words = line.split("  ", 2);
      if (words.length < 2) {
        throw damaged(file, ArchiveWriter.SUMS + " is no list of sums", null);
      }
      sums.put(words[1], words[0]);
    }
    return sums;
  }

  private static byte[] list(Path file, ZipFile zip, String name) throws IOException {
    ZipEntry entry = zip.getEntry(name);
    if (entry == null) {
      throw damaged(file, "it has no " + name, null);
    }
    try (InputStream in = zip.getInputStream(entry)) {
      return in.readNBytes(MOST_OF_A_LIST);
    }
  }

  private static KeepRefused damaged(Path file, String what, Throwable cause) {
    return new KeepRefused(
        Why.DAMAGED, "The backup " + file + " is damaged (" + what + "); take another one.", cause);
  }

  @Override
  public void close() {
    close(zip);
  }
}

package club.emberwell.keep;

import java.io.BufferedOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.sql.SQLException;
import java.util.Set;
import java.util.TreeMap;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Writes an archive beside its place and puts it there when all of it is on disk: there never is
 * half an archive under its name.
 */
final class ArchiveWriter implements AutoCloseable {
  /** The sums of all other members, as {@code sha256sum -c} reads them. */
  static final String SUMS = "SHA256SUMS";

  private static final int BUFFER = 1 << 16;

  /** Pictures take most of the time and give nothing to more effort. */
  private static final int LEVEL = Deflater.BEST_SPEED;

  private static final FileAttribute<Set<PosixFilePermission>> OWNER_ALONE =
      PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

  private final Path target;
  private final Path half;
  private final FileChannel channel;
  private final ZipOutputStream zip;
  private final TreeMap<String, String> sums = new TreeMap<>();

  private ArchiveWriter(Path target, Path half, FileChannel channel) {
    this.target = target;
    this.half = half;
    this.channel = channel;
    this.zip =
        new ZipOutputStream(
            new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER),
            StandardCharsets.UTF_8);
    zip.setLevel(LEVEL);
  }

  /** Begins an archive that nobody but the account of this process can read. */
  static ArchiveWriter begin(Path target) throws IOException {
    Path folder = target.toAbsolutePath().getParent();
    // a name of its own: two may write under the same name at a time
    Path half = Files.createTempFile(folder, target.getFileName() + ".", ".half", OWNER_ALONE);
    FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE);
    return new ArchiveWriter(target, half, channel);
  }

  /** What writes a member. */
  interface Content {
    void writeTo(OutputStream out) throws IOException, SQLException;
  }

  /**
   * A member that was written.
   *
   * @param sha256 of its bytes
   */
  record Written(long bytes, String sha256) {}

  Written add(String name, Content content) throws IOException, SQLException {
    zip.putNextEntry(new ZipEntry(name));
    MessageDigest digest = DigestUtils.getSha256Digest();
    Counting counting = new Counting(zip, digest);
    content.writeTo(counting);
    zip.closeEntry();
    String sum = Hex.encodeHexString(digest.digest());
    sums.put(name, sum);
    return new Written(counting.bytes, sum);
  }

  /** Adds the manifest and the sums, and gives the archive its name. */
  void finish(Manifest manifest) throws IOException, SQLException {
    add(Manifest.NAME, out -> out.write(manifest.toBytes()));
    StringBuilder lines = new StringBuilder();
    sums.forEach((name, sum) -> lines.append(sum).append("  ").append(name).append('\n'));
    zip.putNextEntry(new ZipEntry(SUMS));
    zip.write(lines.toString().getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
    zip.finish();
    zip.flush();
    channel.force(true);
    zip.close();
    Files.move(half, target, StandardCopyOption.ATOMIC_MOVE);
    try (FileChannel folder = FileChannel.open(target.toAbsolutePath().getParent())) {
      folder.force(true);
    }
  }

  /** Takes away what was not finished. */
  @Override
  public void close() throws IOException {
    channel.close();
    Files.deleteIfExists(half);
  }

  /** Counts and sums what passes. */
  private static final class Counting extends FilterOutputStream {
    private final MessageDigest digest;
    private long bytes;

    Counting(OutputStream out, MessageDigest digest) {
      super(out);
      this.digest = digest;
    }

    @Override
    public void write(int b) throws IOException {
      write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] b, int from, int length) throws IOException {
      digest.update(b, from, length);
      bytes += length;
      out.write(b, from, length);
    }
  }
}

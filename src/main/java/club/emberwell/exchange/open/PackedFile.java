package club.emberwell.exchange.open;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * A file of the package while it is written: packed to the disk at once, so that several are
 * written side by side and none is held in memory.
 */
final class PackedFile extends OutputStream {
  private static final int BUFFER = 1 << 16;

  private final String name;
  private final Path packed;
  private final MessageDigest sum = DigestUtils.getSha256Digest();
  private final CRC32 crc = new CRC32();
  // most of the time goes into packing: the fastest way makes files a fifth larger
  private final Deflater deflater = new Deflater(Deflater.BEST_SPEED, true);
  private final OutputStream out;
  private long size;

  PackedFile(String name, Path folder) throws IOException {
    this.name = name;
    this.packed = folder.resolve(name + ".packed");
    this.out =
        new DeflaterOutputStream(
            new BufferedOutputStream(Files.newOutputStream(packed), BUFFER), deflater, BUFFER);
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    sum.update(bytes, from, length);
    crc.update(bytes, from, length);
    size += length;
    out.write(bytes, from, length);
  }

  @Override
  public void close() throws IOException {
    try {
      out.close();
    } finally {
      deflater.end();
    }
  }

  /** Once it is closed. */
  Packed done() {
    String hex = HexFormat.of().formatHex(sum.digest());
    return new Packed(new DataFile(name, size, hex), packed, crc.getValue());
  }

  /** A written file: what is told of it, where its packed bytes are, and their checksum. */
  record Packed(DataFile file, Path bytes, long crc) {}
}

package club.emberwell.exchange.bench;

import club.emberwell.exchange.bench.CopyManifest.Part;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.codec.digest.DigestUtils;

/** Writes a copy, file by file with its sum, the list of them last. */
final class CopyZip implements AutoCloseable {
  private final ZipOutputStream zip;
  private final List<Part> parts = new ArrayList<>();

  CopyZip(Path file) throws IOException {
    zip = new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(file)));
  }

  /** Writes a file bit by bit. */
  interface Filling {
    /**
     * @return how many lines, or null
     */
    Integer into(OutputStream out) throws IOException;
  }

  void add(String name, Filling filling) throws IOException {
    MessageDigest sum = DigestUtils.getSha256Digest();
    zip.putNextEntry(new ZipEntry(name));
    Counted counted = new Counted(new DigestOutputStream(zip, sum));
    Integer lines = filling.into(counted);
    zip.closeEntry();
    parts.add(new Part(name, lines, counted.bytes, HexFormat.of().formatHex(sum.digest())));
  }

  void add(String name, byte[] bytes) throws IOException {
    add(
        name,
        out -> {
          out.write(bytes);
          return null;
        });
  }

  /** Things, one a line. */
  void lines(String name, Stream<BenchLine> lines) throws IOException {
    add(
        name,
        out -> {
          int many = 0;
          for (BenchLine line : (Iterable<BenchLine>) lines::iterator) {
            out.write((CopyJson.line(line.json()) + "\n").getBytes(StandardCharsets.UTF_8));
            many++;
          }
          return many;
        });
  }

  List<Part> parts() {
    return List.copyOf(parts);
  }

  /** The last file, which names all others. */
  void manifest(CopyManifest manifest) throws IOException {
    zip.putNextEntry(new ZipEntry(CopyManifest.NAME));
    zip.write(manifest.toBytes());
    zip.closeEntry();
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }

  /** Never closes what it writes to: that is the zip file. */
  private static final class Counted extends OutputStream {
    private final OutputStream out;
    private long bytes;

    Counted(OutputStream out) {
      this.out = out;
    }

    @Override
    public void write(int one) throws IOException {
      out.write(one);
      bytes++;
    }

    @Override
    public void write(byte[] some, int from, int many) throws IOException {
      out.write(some, from, many);
      bytes += many;
    }
  }
}

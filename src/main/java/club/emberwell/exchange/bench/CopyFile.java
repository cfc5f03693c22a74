package club.emberwell.exchange.bench;

import club.emberwell.exchange.bench.CopyManifest.Part;
import club.emberwell.report.ReportLimits;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * A copy that somebody brought along, opened and checked: its size before it is opened, the bytes
 * of each file while they are unpacked, every sum. Nothing is ever written under a name of it.
 */
final class CopyFile implements AutoCloseable {
  private static final String NOT_OURS = "This is no copy of a bench: ";
  private static final String DAMAGED = "This copy was changed or damaged: ";

  /** The list of five thousand files has less. */
  private static final int LONGEST_MANIFEST = 2_000_000;

  /** End of the central directory of a zip file, with its longest comment. */
  private static final int END = 22 + 65_535;

  private static final int END_SIGNATURE = 0x06054b50;
  private static final int ENTRIES_AT = 10;
  private static final int DIRECTORY_AT = 12;

  /** Of the directory for each file: names are short. */
  private static final int DIRECTORY_OF_ONE = 256;

  private static final Pattern NAME =
      Pattern.compile(
          "[a-z]+\\.(jsonl|html|json)|README\\.md|schema/[a-z]+\\.schema\\.json|pictures/[a-z]+/[0-9a-f-]{36}\\.jpg");

  private final CopyLimits limits;
  private final ZipFile zip;
  private final CopyManifest manifest;
  private final Map<String, Part> parts = new HashMap<>();

  private CopyFile(Path file, CopyLimits limits) throws IOException {
    this.limits = limits;
    requireSmallDirectory(file);
    zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
    try {
      manifest = manifest();
      check();
    } catch (IOException | RuntimeException e) {
      zip.close();
      throw e;
    }
  }

  /**
   * Opens one and checks every sum.
   *
   * @throws CopyRefused with a sentence
   */
  static CopyFile open(Path file, CopyLimits limits) {
    try {
      return new CopyFile(file, limits);
    } catch (IOException | IllegalArgumentException e) {
      throw new CopyRefused(NOT_OURS + "it is no zip file that can be read.");
    }
  }

  /** Opening reads the whole directory, so its size is looked at first. */
  private void requireSmallDirectory(Path file) throws IOException {
    try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
      byte[] end = new byte[(int) Math.min(END, in.length())];
      in.seek(in.length() - end.length);
      in.readFully(end);
      ByteBuffer bytes = ByteBuffer.wrap(end).order(ByteOrder.LITTLE_ENDIAN);
      int at = end.length - 22;
      while (at >= 0 && bytes.getInt(at) != END_SIGNATURE) {
        at--;
      }
      if (at < 0) {
        throw new CopyRefused(NOT_OURS + "it is no zip file that can be read.");
      }
      int entries = Short.toUnsignedInt(bytes.getShort(at + ENTRIES_AT));
      long directory = Integer.toUnsignedLong(bytes.getInt(at + DIRECTORY_AT));
      if (entries > limits.files() || directory > (long) limits.files() * DIRECTORY_OF_ONE) {
        throw new CopyRefused(
            "This file holds too many files: at most %,d.".formatted(limits.files()));
      }
    }
  }

  private CopyManifest manifest() throws IOException {
    ZipEntry entry = zip.getEntry(CopyManifest.NAME);
    if (entry == null) {
      throw new CopyRefused(NOT_OURS + "it has no manifest.json.");
    }
    CopyManifest read;
    try (InputStream in = zip.getInputStream(entry)) {
      JsonNode json = CopyJson.MAPPER.readTree(in.readNBytes(LONGEST_MANIFEST));
      if (!CopyManifest.FORMAT.equals(json.path("format").asText())) {
        throw new CopyRefused(NOT_OURS + "its manifest.json names another format.");
      }
      if (json.path("version").asInt() > CopyManifest.VERSION) {
        throw new CopyRefused(
            "This copy is of format version %d, written by a newer server. This server reads up to version %d."
                .formatted(json.path("version").asInt(), CopyManifest.VERSION));
      }
      read = CopyJson.MAPPER.treeToValue(json, CopyManifest.class);
    } catch (JsonProcessingException e) {
      throw new CopyRefused(NOT_OURS + "its manifest.json cannot be read.");
    }
    if (read.version() < 1 || read.files() == null || read.files().contains(null)) {
      throw new CopyRefused(NOT_OURS + "its manifest.json lacks its version or its list of files.");
    }
    return read;
  }

  private void check() throws IOException {
    for (Part part : manifest.files()) {
      if (part.name() == null || parts.put(part.name(), part) != null) {
        throw new CopyRefused(DAMAGED + "manifest.json names a file twice.");
      }
    }
    Set<String> names = new HashSet<>();
    for (ZipEntry entry : (Iterable<ZipEntry>) zip.stream().map(e -> (ZipEntry) e)::iterator) {
      String name = entry.getName();
      if (!NAME.matcher(name).matches() || !names.add(name)) {
        throw new CopyRefused(
            NOT_OURS + "it holds a file twice, or under a name that no copy has.");
      }
    }
    names.remove(CopyManifest.NAME);
    if (!names.equals(parts.keySet())) {
      throw new CopyRefused(DAMAGED + "its files are not those that manifest.json names.");
    }
    requireSizes();
    for (Part part : manifest.files()) {
      checkSum(part);
    }
  }

  /** By what it says of itself; while it is unpacked no file may have more than that. */
  private void requireSizes() {
    long all = 0;
    for (Part part : manifest.files()) {
      long most = part.name().endsWith(".jpg") ? ReportLimits.PHOTO_UPLOAD : limits.list();
      if (part.bytes() < 0
          || part.bytes() > (part.name().endsWith(".html") ? limits.page() : most)) {
        throw new CopyRefused("%s is too large in this file.".formatted(part.name()));
      }
      all += part.bytes();
    }
    if (all > limits.unpacked()) {
      throw new CopyRefused(
          "This file is too large: unpacked it has more than %,d bytes."
              .formatted(limits.unpacked()));
    }
  }

  private void checkSum(Part part) throws IOException {
    MessageDigest sum = DigestUtils.getSha256Digest();
    byte[] some = new byte[65_536];
    long bytes = 0;
    try (InputStream in = zip.getInputStream(zip.getEntry(part.name()))) {
      for (int read = in.read(some); read >= 0; read = in.read(some)) {
        sum.update(some, 0, read);
        bytes += read;
        if (bytes > part.bytes()) {
          break;
        }
      }
    } catch (IOException e) {
      throw new CopyRefused(DAMAGED + part.name() + " cannot be unpacked.");
    }
    boolean right = HexFormat.of().formatHex(sum.digest()).equalsIgnoreCase(part.sha256());
    if (bytes != part.bytes() || !right) {
      throw new CopyRefused(DAMAGED + "the sum of " + part.name() + " is wrong.");
    }
  }

  CopyManifest said() {
    return manifest;
  }

  /**
   * A line, read or not.
   *
   * @param number from 1
   * @param thing null where it could not be read
   * @param fault why
   */
  record Line(int number, BenchLine thing, String fault) {}

  /** Reads the things of a kind one by one; none where the copy's server did not have it. */
  void each(BenchKind kind, Consumer<Line> reader) throws IOException {
    if (!parts.containsKey(kind.lines())) {
      return;
    }
    byte[] all = bytes(kind.lines(), limits.list());
    int number = 0;
    int from = 0;
    while (from < all.length) {
      int to = from;
      while (to < all.length && all[to] != '\n') {
        to++;
      }
      number++;
      if (number > limits.lines() || to - from > limits.line()) {
        throw new CopyRefused(
            "%s has more than %,d lines, or a line of more than %,d bytes."
                .formatted(kind.lines(), limits.lines(), limits.line()));
      }
      reader.accept(line(kind, number, all, from, to));
      from = to + 1;
    }
  }

  private static Line line(BenchKind kind, int number, byte[] all, int from, int to) {
    try {
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(all, from, to - from))
              .toString();
      return new Line(number, BenchLine.brought(kind, CopyJson.MAPPER.readTree(text)), null);
    } catch (CharacterCodingException | JsonProcessingException e) {
      return new Line(number, null, "This line is no JSON in UTF-8.");
    } catch (BenchLine.Unreadable e) {
      return new Line(number, null, e.getMessage());
    }
  }

  /** Whether it holds a picture under this name that looks like one. */
  boolean hasPicture(String name, int most) throws IOException {
    Part part = parts.get(name);
    if (part == null || !name.endsWith(".jpg") || part.bytes() > most) {
      return false;
    }
    try (InputStream in = zip.getInputStream(zip.getEntry(name))) {
      byte[] start = in.readNBytes(3);
      return start.length == 3
          && start[0] == (byte) 0xFF
          && start[1] == (byte) 0xD8
          && start[2] == (byte) 0xFF;
    }
  }

  /** A picture that {@link #hasPicture} found. */
  InputStream picture(String name, int most) throws IOException {
    return new ByteArrayInputStream(bytes(name, most));
  }

  private byte[] bytes(String name, long most) throws IOException {
    try (InputStream in = zip.getInputStream(zip.getEntry(name))) {
      byte[] all = in.readNBytes((int) most + 1);
      if (all.length > most) {
        throw new CopyRefused("%s has more than %,d bytes.".formatted(name, most));
      }
      return all;
    }
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}

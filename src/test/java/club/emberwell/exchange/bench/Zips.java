package club.emberwell.exchange.bench;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Copies read and forged by a stranger's means: the JDK's zip, and a JSON library not ours. */
public final class Zips {
  private static final Gson JSON = new GsonBuilder().disableHtmlEscaping().create();

  private Zips() {}

  static Map<String, byte[]> files(byte[] zip) throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        files.put(entry.getName(), in.readAllBytes());
      }
    }
    return files;
  }

  static String text(Map<String, byte[]> files, String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }

  static List<JsonObject> lines(Map<String, byte[]> files, BenchKind kind) {
    String text = text(files, kind.lines());
    return text.isEmpty()
        ? List.of()
        : Arrays.stream(text.split("\n"))
            .map(l -> JsonParser.parseString(l).getAsJsonObject())
            .toList();
  }

  /** Puts other lines of a kind in, and mends the list of files. */
  static byte[] with(byte[] zip, BenchKind kind, List<JsonObject> lines) throws IOException {
    StringBuilder text = new StringBuilder();
    lines.forEach(line -> text.append(JSON.toJson(line)).append('\n'));
    return with(zip, kind.lines(), text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** Puts a file in, and mends the list of files; null takes it out. */
  static byte[] with(byte[] zip, String name, byte[] bytes) throws IOException {
    Map<String, byte[]> files = files(zip);
    JsonObject manifest = JsonParser.parseString(text(files, "manifest.json")).getAsJsonObject();
    if (bytes == null) {
      files.remove(name);
    } else {
      files.put(name, bytes);
    }
    manifest
        .getAsJsonArray("files")
        .asList()
        .removeIf(one -> one.getAsJsonObject().get("name").getAsString().equals(name));
    if (bytes != null) {
      JsonObject part = new JsonObject();
      part.addProperty("name", name);
      part.addProperty("bytes", bytes.length);
      part.addProperty("sha256", sha256(bytes));
      manifest.getAsJsonArray("files").add(part);
    }
    files.put("manifest.json", JSON.toJson(manifest).getBytes(StandardCharsets.UTF_8));
    return zip(files);
  }

  /** A copy of these files. */
  public static byte[] copy(Map<String, byte[]> files) throws IOException {
    byte[] copy =
        zip(
            Map.of(
                "manifest.json",
                "{\"format\":\"emberwell-bench\",\"version\":1,\"savedAt\":\"2026-03-01T10:00:00.000000Z\",\"member\":\"ben\",\"files\":[]}"
                    .getBytes(StandardCharsets.UTF_8)));
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      copy = with(copy, file.getKey(), file.getValue());
    }
    return copy;
  }

  /** A copy with a tray that can be restored, one that cannot, and a line that is none. */
  public static byte[] mixed() throws IOException {
    String line =
        """
        {"id":"%s","kind":"fixture","name":"Tray for pens","state":"live","version":1,\
        "createdAt":"2026-03-01T10:00:00.000000Z","updatedAt":"2026-03-01T10:00:00.000000Z",\
        "numberStyle":"any","written":%s,"revisions":[{"version":1,"action":"posted",\
        "at":"2026-03-01T10:00:00.000000Z","state":"live","written":%2$s}]}
        """;
    String tray = "{\"name\":\"Tray for pens\",\"rows\":%d,\"columns\":1}";
    String lines =
        line.formatted(UUID.randomUUID(), tray.formatted(1))
            + line.formatted(UUID.randomUUID(), tray.formatted(0))
            + "no JSON\n";
    return copy(Map.of("fixtures.jsonl", lines.getBytes(StandardCharsets.UTF_8)));
  }

  static byte[] zip(Map<String, byte[]> files) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        out.putNextEntry(new ZipEntry(file.getKey()));
        out.write(file.getValue());
        out.closeEntry();
      }
    }
    return bytes.toByteArray();
  }

  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (java.security.NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}

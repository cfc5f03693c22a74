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
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Copies read and forged by a stranger's means: the JDK's zip, and a JSON library not ours. */
final class Zips {
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
        : Arrays.stream(text.split("\n")).map(l -> JsonParser.parseString(l).getAsJsonObject()).toList();
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
    manifest.getAsJsonArray("files").asList().removeIf(
        one -> one.getAsJsonObject().get("name").getAsString().equals(name));
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

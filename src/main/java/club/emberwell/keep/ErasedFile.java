package club.emberwell.keep;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * Who left the club, beside the database: a line of JSON for each, so that those stay away of whom
 * a lost database knew.
 */
public record ErasedFile(Path file) {
  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .addModule(new JavaTimeModule())
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .build();

  /** The file of a home. */
  public static ErasedFile of(Path home) {
    return new ErasedFile(home.resolve("erasures.jsonl"));
  }

  /** All of them; the last line may be half written, then it comes again with the next copy. */
  public List<Erased> all() throws IOException {
    List<Erased> found = new ArrayList<>();
    if (!Files.exists(file)) {
      return found;
    }
    for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
      if (line.startsWith("{") && line.endsWith("}")) {
        found.add(JSON.readValue(line, Erased.class));
      }
    }
    return found;
  }

  /**
   * Adds those that are missing; they are on disk when this is done.
   *
   * @return how many were
   */
  public int add(Collection<Erased> erased) throws IOException {
    Set<UUID> known = new HashSet<>();
    all().forEach(one -> known.add(one.member()));
    StringBuilder lines = new StringBuilder();
    int added = 0;
    for (Erased one : erased) {
      if (known.add(one.member())) {
        // a line of its own, also behind half a line
        lines.append('\n').append(JSON.writeValueAsString(one)).append('\n');
        added++;
      }
    }
    if (added > 0) {
      append(lines.toString().getBytes(StandardCharsets.UTF_8));
    }
    return added;
  }

  private void append(byte[] bytes) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            file,
            Set.of(StandardOpenOption.CREATE, StandardOpenOption.APPEND),
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")))) {
      ByteBuffer left = ByteBuffer.wrap(bytes);
      while (left.hasRemaining()) {
        channel.write(left);
      }
      channel.force(true);
    }
  }
}

package club.emberwell.access.traffic;

import io.vertx.core.buffer.Buffer;
import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A body that has arrived whole, in memory or in a file that ends with the request. */
final class SentBody implements Closeable {
  private final Buffer memory;
  private final Path file;
  private InputStream opened;

  private SentBody(Buffer memory, Path file) {
    this.memory = memory;
    this.file = file;
  }

  static SentBody inMemory(Buffer bytes) {
    return new SentBody(bytes, null);
  }

  static SentBody inFile(Path file) {
    return new SentBody(null, file);
  }

  synchronized InputStream open() throws IOException {
    opened =
        file == null ? new ByteArrayInputStream(memory.getBytes()) : Files.newInputStream(file);
    return opened;
  }

  @Override
  public synchronized void close() throws IOException {
    if (opened != null) {
      opened.close();
    }
    if (file != null) {
      Files.deleteIfExists(file);
    }
  }
}

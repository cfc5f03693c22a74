package club.emberwell.launch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A program that is run to its end. */
final class ProgramRun {
  private ProgramRun() {}

  /**
   * What it printed.
   *
   * @throws IOException where it fails or takes longer
   */
  static String output(List<String> line, Duration timeout) throws IOException {
    Path output = Files.createTempFile("emberwell-", ".out");
    try {
      Process process =
          new ProcessBuilder(line)
              .redirectErrorStream(true)
              .redirectOutput(output.toFile())
              .start();
      if (!process.waitFor(timeout.toSeconds(), TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IOException(line.get(0) + " did not end in time");
      }
      String text = Files.readString(output, StandardCharsets.UTF_8);
      if (process.exitValue() != 0) {
        throw new IOException(String.join(" ", line) + " failed: " + text.strip());
      }
      return text;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } finally {
      Files.deleteIfExists(output);
    }
  }
}

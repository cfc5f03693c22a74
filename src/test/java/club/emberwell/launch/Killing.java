package club.emberwell.launch;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** SIGKILL, as a machine that runs out of memory sends it. */
final class Killing {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private Killing() {}

  /** Returns when they are gone. */
  static void kill(List<ProcessHandle> doomed) throws IOException {
    doomed.forEach(ProcessHandle::destroyForcibly);
    for (ProcessHandle each : doomed) {
      if (!ends(each, PATIENCE)) {
        throw new IOException("process " + each.pid() + " does not die");
      }
    }
  }

  /** Whether a process ends in time. */
  static boolean ends(ProcessHandle process, Duration time) throws IOException {
    try {
      process.onExit().get(time.toMillis(), TimeUnit.MILLISECONDS);
      return true;
    } catch (TimeoutException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException();
    } catch (ExecutionException e) {
      throw new IOException(e);
    }
  }

  /**
   * The server of a data folder and each of its processes, the server first; none where none runs.
   */
  static List<ProcessHandle> serverOf(Path data) throws IOException {
    List<ProcessHandle> all = new ArrayList<>();
    if (Files.exists(data)) {
      Postmaster.runningOn(data.toRealPath())
          .flatMap(server -> ProcessHandle.of(server.pid()))
          .ifPresent(
              server -> {
                all.add(server);
                all.addAll(server.children().toList());
              });
    }
    return all;
  }
}

package club.emberwell.launch;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** SIGKILL, as a machine that runs out of memory sends it. */
final class Killing {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private Killing() {}

  /** Returns when they are gone. */
  static void kill(List<ProcessHandle> doomed) throws Exception {
    doomed.forEach(ProcessHandle::destroyForcibly);
    for (ProcessHandle each : doomed) {
      each.onExit().get(PATIENCE.toSeconds(), TimeUnit.SECONDS);
    }
  }

  /**
   * The server of a data folder and each of its processes, the server first; none where none runs.
   */
  static List<ProcessHandle> serverOf(Path data) throws Exception {
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

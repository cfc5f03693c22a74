package club.emberwell.launch;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import org.awaitility.core.ConditionTimeoutException;
import org.awaitility.core.TerminalFailureException;

/** The program as Maven packaged it, run in a process of its own. */
final class PackagedProgram {
  /** It lives for seconds: what the second compiler gains later it takes from the start. */
  private static final List<String> QUICK =
      List.of("-Xmx300m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

  static final Path PACKAGED = Path.of("target", "quarkus-app").toAbsolutePath();
  private static final Duration PATIENCE = Duration.ofMinutes(5);

  /** One for all looks, so that they take one of the connections an address may have. */
  private static final HttpClient PROBE = HttpClient.newHttpClient();

  final Process process;
  final int port;
  private final Path output;

  private PackagedProgram(Process process, int port, Path output) {
    this.process = process;
    this.port = port;
    this.output = output;
  }

  /** Below the ports that systems give to connections, so that none takes it before the start. */
  static int freePort() throws IOException {
    IOException taken = null;
    for (int i = 0; i < 50; i++) {
      int port = ThreadLocalRandom.current().nextInt(15_000, 30_000);
      try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
        return socket.getLocalPort();
      } catch (IOException e) {
        taken = e;
      }
    }
    throw taken;
  }

  /** Starts it on a free port; {@code prefix} is a command that runs another one. */
  static PackagedProgram start(
      List<String> prefix, Path app, Path home, Map<String, String> environment, String... words)
      throws IOException {
    int port = freePort();
    List<String> line = new ArrayList<>(prefix);
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.addAll(QUICK);
    line.addAll(List.of("-jar", app.resolve("quarkus-run.jar").toString()));
    line.addAll(List.of(words));
    line.addAll(List.of("--home", home.toString()));
    Path output = Files.createTempFile("emberwell-program-", ".log");
    ProcessBuilder builder =
        new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(output.toFile());
    builder.environment().put("EMBERWELL_PORT", Integer.toString(port));
    builder.environment().putAll(environment);
    return new PackagedProgram(builder.start(), port, output);
  }

  static PackagedProgram start(Path home, Map<String, String> environment, String... words)
      throws IOException {
    return start(List.of(), PACKAGED, home, environment, words);
  }

  /** Waits until the readiness check answers with a status. */
  void awaitReadiness(int status) throws Exception {
    try {
      await()
          .atMost(PATIENCE)
          .failFast("the program has ended", () -> !process.isAlive())
          .until(() -> readiness() == status);
    } catch (ConditionTimeoutException | TerminalFailureException e) {
      throw new AssertionError("readiness is not " + status + ": " + output(), e);
    }
  }

  /** Waits until it is ready or has ended. */
  void awaitReadyOrEnd() {
    await().atMost(PATIENCE).until(() -> !process.isAlive() || readiness() == 200);
  }

  /** The status of the readiness check; 0 where nothing answers. */
  int readiness() throws InterruptedException {
    URI uri = URI.create("http://127.0.0.1:" + port + "/q/health/ready");
    try {
      return PROBE
          .send(
              HttpRequest.newBuilder(uri).timeout(Duration.ofSeconds(10)).build(),
              HttpResponse.BodyHandlers.discarding())
          .statusCode();
    } catch (IOException e) {
      return 0;
    }
  }

  /** Waits for its end; answers the exit code. */
  int awaitEnd() throws InterruptedException {
    if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("the program does not end");
    }
    return process.exitValue();
  }

  String output() throws IOException {
    return Files.readString(output);
  }

  /** The server below a home, while it runs. */
  static Postmaster database(Path home) throws IOException {
    return Postmaster.runningOn(home.toRealPath().resolve("postgres/data")).orElseThrow();
  }
}

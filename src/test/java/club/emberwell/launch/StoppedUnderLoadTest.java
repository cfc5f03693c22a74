package club.emberwell.launch;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.RawCall;
import java.io.IOException;
import java.net.URI;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The packaged program, told to stop while people use it; and whom it does not let in. */
@Tag("packaged")
@Tag("slow")
class StoppedUnderLoadTest {
  private static final int SLOW = 20;
  private static final int BUSY = 4;

  /** A stack trace, whatever threw it. */
  private static final Pattern STACK = Pattern.compile("(?m)^\\s+at [\\w.$/@]+\\(|Exception");

  private Path home;
  private PackagedProgram program;

  @BeforeEach
  void makeHome() throws IOException {
    home = Files.createTempDirectory("emberwell-home-");
  }

  @AfterEach
  void end() throws Exception {
    program.process.destroyForcibly().waitFor();
    Path data = home.resolve("postgres/data");
    Postmaster.runningOn(data)
        .flatMap(server -> ProcessHandle.of(server.pid()))
        .ifPresent(ProcessHandle::destroyForcibly);
    PostgresBinaries.deleteTree(home);
  }

  private URL server() throws IOException {
    return URI.create("http://127.0.0.1:" + program.port + "/").toURL();
  }

  private void start(Map<String, String> settings) throws Exception {
    program = PackagedProgram.start(home, settings);
    program.awaitReadiness(200);
  }

  @Test
  void allThatIsInFlightIsAnsweredBeforeItEnds() throws Exception {
    start(Map.of());
    AtomicBoolean stopped = new AtomicBoolean();
    Queue<String> cut = new ConcurrentLinkedQueue<>();
    List<Thread> busy = new ArrayList<>();
    for (int i = 0; i < BUSY; i++) {
      Thread reader = new Thread(() -> read(stopped, cut));
      reader.start();
      busy.add(reader);
    }
    String body = "{\"handle\": \"nobody\", \"password\": \"not the right one\", \"label\": \"x\"}";
    List<RawCall> slow = new ArrayList<>();
    for (int i = 0; i < SLOW; i++) {
      RawCall call = new RawCall(server());
      call.send(
          "POST /api/v1/tokens HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
              + "Content-Length: %d\r\n\r\n%s".formatted(body.length(), body.substring(0, 10)));
      slow.add(call);
    }
    Thread.sleep(500); // so that the heads are there
    program.process.destroy();
    stopped.set(true);
    await().atMost(Duration.ofSeconds(20)).until(() -> program.readiness() != 200);
    for (RawCall call : slow) {
      call.send(body.substring(10));
    }
    for (RawCall call : slow) {
      String answer = call.answer();
      assertTrue(answer.matches("(?s)HTTP/1.1 (401|429) .*\\}\\s*"), () -> answer + output());
    }
    for (Thread each : busy) {
      each.join();
    }
    assertTrue(cut.isEmpty(), () -> cut + output());
    assertEquals(143, program.awaitEnd());
    assertFalse(STACK.matcher(output()).find(), output());
    String log = Files.readString(home.resolve("postgres/server.log"));
    assertFalse(log.contains("terminating connection"), log);
  }

  /** Asks for pages until the program was told to stop; what was asked must be answered. */
  private void read(AtomicBoolean stopped, Queue<String> cut) {
    while (!stopped.get()) {
      try (RawCall call = new RawCall(server())) {
        call.send("GET /about HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        String answer = call.answer();
        if (!answer.startsWith("HTTP/1.1 200 ") || !answer.contains("</html>")) {
          cut.add("cut: " + answer);
        }
      } catch (IOException e) {
        if (!stopped.get()) {
          cut.add(e.toString());
        }
      }
    }
  }

  private String output() {
    try {
      return program.output();
    } catch (IOException e) {
      return e.toString();
    }
  }

  @Test
  void oneAddressHasSoManyConnectionsAndAHeadEndsInTime() throws Exception {
    start(
        Map.of(
            "EMBERWELL_LIMITS_TRAFFIC_CONNECTIONS_OF_ONE", "6",
            "EMBERWELL_LIMITS_TRAFFIC_HEAD_TIME", "3S"));
    List<RawCall> open = new ArrayList<>();
    long begun = System.nanoTime();
    for (int i = 0; i < 5; i++) {
      RawCall call = new RawCall(server());
      call.send("GET /about HTTP/1.1\r\nHost: localhost\r\n");
      open.add(call);
    }
    RawCall dribble = open.get(0);
    await()
        .atMost(Duration.ofSeconds(30))
        .pollInterval(Duration.ofMillis(500))
        .until(() -> !dribble.sent("X-Slow: 1\r\n"));
    assertTrue(Duration.ofNanos(System.nanoTime() - begun).toSeconds() >= 2);
    for (RawCall call : open) {
      assertEquals("", call.answer());
      call.close();
    }
    open.clear();
    await().until(() -> program.readiness() == 200);
    for (int i = 0; i < 12; i++) {
      RawCall call = new RawCall(server());
      call.sent("GET /about HTTP/1.1\r\nHost: localhost\r\n\r\n");
      open.add(call);
    }
    long answered = 0;
    for (RawCall call : open) {
      answered += "HTTP/1.1 200 OK".equals(firstLine(call)) ? 1 : 0;
    }
    assertTrue(answered >= 4 && answered <= 6, answered + " of 12");
    for (RawCall call : open) {
      call.close();
    }
    await().until(() -> program.readiness() == 200);
  }

  /** What the framework refuses before any of our code is asked. */
  @Test
  void alsoWhatIsNoHttpIsAnsweredWithTheGuards() throws Exception {
    start(Map.of("EMBERWELL_LOG_FORMAT", "json"));
    for (Map.Entry<String, Integer> each :
        Map.of(
                "GET /%zz HTTP/1.1\r\nHost: localhost",
                400,
                "GET /" + "x".repeat(20_000) + " HTTP/1.1\r\nHost: localhost",
                414,
                "GET / HTTP/1.1\r\nHost: localhost\r\nX-Long: " + "x".repeat(40_000),
                431,
                "GET / HTTP/1.1",
                400,
                "nonsense",
                400)
            .entrySet()) {
      try (RawCall call = new RawCall(server())) {
        call.send(each.getKey() + "\r\nConnection: close\r\n\r\n");
        String answer = call.answer();
        assertTrue(answer.matches("(?s)HTTP/1\\.[01] " + each.getValue() + " .*"), answer);
        for (String name : List.of("Content-Security-Policy", "X-Content-Type-Options")) {
          assertTrue(answer.contains(name + ": "), answer);
        }
      }
    }
    // one object a line (EMBERWELL_LOG_FORMAT=json)
    assertTrue(output().lines().anyMatch(line -> line.startsWith("{\"timestamp\"")), output());
  }

  private static String firstLine(RawCall call) {
    try {
      return call.line();
    } catch (IOException e) {
      return null;
    }
  }
}

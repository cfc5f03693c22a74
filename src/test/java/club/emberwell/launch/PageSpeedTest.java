package club.emberwell.launch;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What pages cost a server with the invented club, in time of its processor, with a plain page of
 * the same server beside them; printed and never asserted: {@code mvn -DskipTests package} and then
 * {@code mvn surefire:test -Pbenchmark -Dtest=PageSpeedTest}.
 */
@Tag("benchmark")
class PageSpeedTest {
  private static final int WARM = 1_500;
  private static final int ROUNDS = 1_000;
  private static final List<String> PAGES =
      List.of(
          "/about",
          "/",
          "/?q=slate",
          "/?q=navy+powder+coat",
          "/?q=plywood",
          "/?material=birch-plywood&process=cut",
          "/range",
          "/range?q=slate");

  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  @TempDir Path home;

  @Test
  void whatPagesCost() throws Exception {
    PackagedProgram club = PackagedProgram.start(home, Map.of(), "demo");
    try {
      club.awaitReadiness(200);
      await()
          .atMost(Duration.ofMinutes(10))
          .pollInterval(Duration.ofSeconds(1))
          .until(() -> club.output().contains("entries of talk were added"));
      for (int round = 0; round < 2; round++) {
        // the first round only warms up
        for (String page : PAGES) {
          measure(club, page, round == 0 ? WARM : ROUNDS, round > 0);
        }
      }
    } finally {
      club.process.destroy();
      club.awaitEnd();
    }
  }

  private void measure(PackagedProgram club, String page, int times, boolean told)
      throws IOException, InterruptedException {
    int bytes = 0;
    Duration before = used(club);
    long start = System.nanoTime();
    for (int i = 0; i < times; i++) {
      bytes = get(club, page);
    }
    double clock = (System.nanoTime() - start) / 1e6 / times;
    double processor = used(club).minus(before).toNanos() / 1e6 / times;
    if (told) {
      System.out.printf(
          "%-40s %6.1f kB, %5.2f ms of processor, %5.2f ms by the clock%n",
          page, bytes / 1000.0, processor, clock);
    }
  }

  private static Duration used(PackagedProgram club) {
    return club.process.toHandle().info().totalCpuDuration().orElseThrow();
  }

  private int get(PackagedProgram club, String page) throws IOException, InterruptedException {
    URI uri = URI.create("http://127.0.0.1:" + club.port + page);
    HttpResponse<byte[]> answer =
        http.send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofByteArray());
    if (answer.statusCode() != 200) {
      throw new AssertionError(page + ": " + answer.statusCode());
    }
    return answer.body().length;
  }
}

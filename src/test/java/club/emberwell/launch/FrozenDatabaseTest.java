package club.emberwell.launch;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.net.URL;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/**
 * A database whose processes stand still (SIGSTOP), as one on a machine that swaps or loses its
 * disk.
 */
@QuarkusTest
class FrozenDatabaseTest {
  /** Tells an answer from a request that hangs until the database is back. */
  private static final Duration ANSWERS = Duration.ofSeconds(15);

  private static final int MANY = 260;
  private static final int IDLE = 24;

  @TestHTTPResource("/")
  URL server;

  @Inject DataSource database;

  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private List<ProcessHandle> frozen = List.of();

  /** The processes of the server of this test run, the first one too, so that none can be made. */
  private void freeze() throws IOException, InterruptedException {
    Postmaster first =
        Postmaster.runningOn(TestServer.shared().folder().resolve("data")).orElseThrow();
    ProcessHandle postmaster = ProcessHandle.of(first.pid()).orElseThrow();
    frozen = Stream.concat(Stream.of(postmaster), postmaster.descendants()).toList();
    signal("-STOP");
  }

  private void signal(String name) throws IOException, InterruptedException {
    for (ProcessHandle each : frozen) {
      new ProcessBuilder("kill", name, Long.toString(each.pid())).start().waitFor();
    }
  }

  @AfterEach
  void thaw() throws IOException, InterruptedException {
    signal("-CONT");
    frozen = List.of();
    await()
        .atMost(Duration.ofSeconds(60))
        .until(() -> given().get("/q/health/ready").statusCode() == 200);
  }

  private CompletableFuture<HttpResponse<String>> get(String path) {
    HttpRequest request = HttpRequest.newBuilder(URI.create(server + path.substring(1))).build();
    return client.sendAsync(request, HttpResponse.BodyHandlers.ofString());
  }

  /** As many as a busy club has, which would be tried one after the other. */
  private void leaveIdleConnections() throws SQLException {
    List<Connection> idle = new ArrayList<>();
    try {
      for (int i = 0; i < IDLE; i++) {
        idle.add(database.getConnection());
      }
    } finally {
      for (Connection each : idle) {
        each.close();
      }
    }
  }

  @Test
  void requestsAreToldInTimeAndHealthAnswersAtOnce() throws Exception {
    given().get("/q/health/live").then().statusCode(200);
    String path = "/api/v1/tags/K7F-4";
    given().get(path);
    leaveIdleConnections();
    freeze();
    HttpResponse<String> problem = within(get(path));
    assertEquals(503, problem.statusCode(), problem.body());
    assertTrue(problem.headers().firstValue("Retry-After").isPresent());
    assertTrue(problem.body().contains("/problems/unavailable"), problem.body());
    HttpResponse<String> page = within(get("/t/K7F-4"));
    assertEquals(503, page.statusCode(), page.body());
    assertTrue(page.body().contains("<h1>"), page.body());
    assertTimeoutPreemptively(
        ANSWERS,
        () ->
            given()
                .get("/q/health/ready")
                .then()
                .statusCode(503)
                .body("checks.find { it.name == 'tables' }.status", equalTo("DOWN")));
  }

  @Test
  void alsoWhereMoreRequestsHangThanThereAreThreads() throws Exception {
    given().get("/q/health/live").then().statusCode(200);
    freeze();
    List<CompletableFuture<HttpResponse<String>>> all = new ArrayList<>();
    for (int i = 0; i < MANY; i++) {
      all.add(get("/t/K7F-4"));
    }
    for (int i = 0; i < 5; i++) {
      assertTimeoutPreemptively(
          ANSWERS,
          () -> given().get("/q/health/live").then().statusCode(200).body(containsString("UP")));
    }
    for (CompletableFuture<HttpResponse<String>> each : all) {
      each.get(2, TimeUnit.MINUTES);
    }
  }

  @Test
  void aConnectionThatIsInUseIsGivenUpAndTheNextOneWorks() throws Exception {
    People.Person ada = People.join();
    leaveIdleConnections();
    freeze();
    HttpRequest whoAmI =
        HttpRequest.newBuilder(URI.create(server + "api/v1/me"))
            .header("Authorization", "Bearer " + ada.token())
            .build();
    assertEquals(
        503, within(client.sendAsync(whoAmI, HttpResponse.BodyHandlers.ofString())).statusCode());
    thaw();
    ada.asks().get("/api/v1/me").then().statusCode(200);
  }

  /** The server ends what nobody waits for (PostgreSQL, client_connection_check_interval). */
  @Test
  void connectionsSayHowLongAStatementMayRunAfterTheProgramIsGone() throws SQLException {
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement();
        var row = statement.executeQuery("show client_connection_check_interval")) {
      assertTrue(row.next());
      assertEquals("5s", row.getString(1));
      assertEquals(
          Duration.ofMinutes(2).toMillis(),
          connection.getNetworkTimeout(),
          "outside of requests there is more time");
    }
  }

  private static HttpResponse<String> within(CompletableFuture<HttpResponse<String>> answer)
      throws InterruptedException, ExecutionException, TimeoutException {
    return answer.get(ANSWERS.toSeconds(), TimeUnit.SECONDS);
  }
}

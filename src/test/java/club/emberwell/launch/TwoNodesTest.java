package club.emberwell.launch;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Two nodes of one club, each the packaged program in a home of its own, over one database. */
@Tag("packaged")
@Tag("slow")
class TwoNodesTest {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final String PASSWORD = "copper kettle 81 moss";

  private static final Map<String, String> OPEN =
      Map.of(
          "EMBERWELL_FIRST_DOOR", "open",
          "EMBERWELL_FIRST_READING_PUBLIC", "true",
          "EMBERWELL_DESK_FIRST_LOOK", "0",
          "JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1");

  private Path folder;
  private PackagedProgram one;
  private PackagedProgram other;

  @BeforeEach
  void startBoth() throws Exception {
    folder = Files.createTempDirectory("emberwell-nodes-");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    one = PackagedProgram.start(folder.resolve("one"), OPEN);
    one.awaitReadiness(200);
    Path home = folder.resolve("one");
    Map<String, String> shared = new HashMap<>(OPEN);
    shared.put(
        "EMBERWELL_DATABASE_URL",
        "jdbc:postgresql://127.0.0.1:" + PackagedProgram.database(home).port() + "/emberwell");
    shared.put("EMBERWELL_DATABASE_USER", EmbeddedPostgres.USER);
    shared.put("EMBERWELL_DATABASE_PASSWORD_FILE", home.resolve("postgres/password").toString());
    other = PackagedProgram.start(folder.resolve("other"), shared);
    other.awaitReadiness(200);
  }

  @AfterEach
  void endBoth() throws Exception {
    if (other != null) {
      other.process.destroyForcibly().waitFor();
    }
    one.process.destroyForcibly().waitFor();
    Killing.kill(Killing.serverOf(folder.resolve("one/postgres/data")));
    PostgresBinaries.deleteTree(folder);
  }

  @Test
  void aMemberMeetsOneClubWhicheverNodeAnswers() throws Exception {
    CrashClient ada = new CrashClient("ada-of-both", one.port, 1);
    CrashClient ben = new CrashClient("ben-of-both", other.port, 2);
    aBrowserIsSignedInAtBothAndSignedOutAtBoth(ada.handle);
    whatIsPostedAtOneIsFoundAtTheOther(ada);
    aWatchTellsOnce(ada, ben);
    triesToSignInAreCountedTogether(ben.handle);
  }

  private void aBrowserIsSignedInAtBothAndSignedOutAtBoth(String handle) throws Exception {
    Browser browser = new Browser();
    Map<String, String> typed = Map.of("handle", handle, "password", PASSWORD);
    assertEquals(303, browser.submit(one.port, "/sign-in", "/sign-in", typed).statusCode());
    for (PackagedProgram node : new PackagedProgram[] {one, other}) {
      assertTrue(browser.open(node.port, "/bench").body().contains(handle));
    }
    assertEquals(303, browser.submit(other.port, "/bench", "/sign-out", Map.of()).statusCode());
    assertTrue(
        !browser.open(one.port, "/").body().contains(handle), "still signed in at the first");
  }

  private void whatIsPostedAtOneIsFoundAtTheOther(CrashClient ada) throws Exception {
    int most = 5;
    ada.work(() -> ada.kept.size() < most);
    CrashClient reader = new CrashClient("reader-of-both", other.port, 3);
    await().atMost(PATIENCE).until(() -> reader.total() == most);
  }

  /** Both nodes look for what watches wait for. */
  private void aWatchTellsOnce(CrashClient ada, CrashClient ben) throws Exception {
    Map<String, Object> wish = Map.of("query", "material=maple");
    assertEquals(201, ben.send("/api/v1/watches", wish).statusCode());
    int before = ada.kept.size();
    ada.work(() -> ada.kept.size() < before + 10);
    Map<String, Integer> told = new TreeMap<>();
    await()
        .atMost(PATIENCE)
        .until(
            () -> {
              told.clear();
              JsonNode inbox = CrashClient.read(ben.insist(ben.get("/api/v1/inbox?size=100"), 200));
              inbox
                  .get("items")
                  .forEach(each -> told.merge(each.at("/item/id").asText(), 1, Integer::sum));
              return told.size() >= 10;
            });
    told.forEach((id, times) -> assertEquals(1, times, "told again of " + id));
  }

  private void triesToSignInAreCountedTogether(String handle) throws Exception {
    Browser guesser = new Browser();
    Map<String, String> guess = Map.of("handle", handle, "password", "not the right one at all");
    PackagedProgram[] nodes = {one, other};
    int tries = 0;
    while (guesser.submit(nodes[tries % 2].port, "/sign-in", "/sign-in", guess).statusCode()
        != 429) {
      tries++;
      assertTrue(tries < 10, "each node counts for itself");
    }
    Map<String, String> right = Map.of("handle", handle, "password", PASSWORD);
    int there = nodes[(tries + 1) % 2].port;
    assertEquals(429, guesser.submit(there, "/sign-in", "/sign-in", right).statusCode());
  }
}

package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * {@code mvn package -DskipTests && mvn surefire:test -Pcrash}: members post, change and add photos
 * while the program, its database, the network, the disk and the clock fail, one after the other by
 * chance from a seed. Afterwards everything acknowledged is there exactly once, whole, and found.
 * Needs root for a disk of its own (tmpfs), and Debian's libfaketime for the clock.
 *
 * <p>{@code -Dcrash.cycles=200 -Dcrash.seed=1 -Dcrash.clients=6}
 */
@Tag("crash")
class CrashTest {
  private static final int CYCLES = Integer.getInteger("crash.cycles", 200);
  private static final int CLIENTS = Integer.getInteger("crash.clients", 6);
  private static final long SEED = Long.getLong("crash.seed", 1);

  private final Map<CrashFault, Integer> struck = new EnumMap<>(CrashFault.class);
  private final List<CrashClient> clients = new ArrayList<>();
  private final Random chance = new Random(SEED);
  private final ExecutorService threads = Executors.newFixedThreadPool(CLIENTS);
  private Path disk;

  @BeforeEach
  void mount() throws Exception {
    disk = Files.createTempDirectory("emberwell-disk-");
    run("mount", "-t", "tmpfs", "-o", "size=2500m", "tmpfs", disk.toString());
    Files.setPosixFilePermissions(disk, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  @AfterEach
  void unmount() throws Exception {
    threads.shutdownNow();
    run("umount", "--lazy", disk.toString());
    Files.delete(disk);
  }

  @Test
  void whatWasAcknowledgedIsThereOnceAndWhole() throws Exception {
    long begun = System.nanoTime();
    try (CrashClub club = new CrashClub(disk, false)) {
      assertTrue(club.canMoveClock(), "install libfaketime");
      join(club);
      for (int cycle = 1; cycle <= CYCLES; cycle++) {
        CrashFault fault = CrashFault.any(chance);
        strike(club, fault);
        clients.forEach(each -> each.touched().forEach(kept -> check(each, kept)));
        System.out.printf("cycle %d of %d: %s; %d reports kept%n", cycle, CYCLES, fault, reports());
      }
      clients.forEach(each -> each.kept.values().forEach(kept -> check(each, kept)));
      clients.forEach(CrashTest::nothingElse);
      say(club, System.nanoTime() - begun);
    }
  }

  /** The same count finds a loss where commits are answered before they are on disk. */
  @Test
  void theCountCanShowALoss() throws Exception {
    try (CrashClub club = new CrashClub(disk, true)) {
      join(club);
      // the members themselves stay
      try (Connection connection = club.connect();
          Statement statement = connection.createStatement()) {
        statement.execute("checkpoint");
      }
      int lost = 0;
      for (int cycle = 1; cycle <= 10 && lost == 0; cycle++) {
        try {
          strike(club, CrashFault.DATABASE_KILLED);
        } catch (ExecutionException e) {
          // a member missed their own work before the count began
          lost++;
        }
        for (CrashClient client : clients) {
          lost += (int) client.touched().stream().filter(kept -> !client.finds(kept)).count();
        }
      }
      System.out.println("negative control: " + lost + " lost");
      assertFalse(lost == 0, "nothing is lost without care for the disk: the count is blind");
    }
  }

  private void join(CrashClub club) throws Exception {
    for (int i = 0; i < CLIENTS; i++) {
      clients.add(new CrashClient("crash-client-" + i, club.toProgram.port(), chance.nextLong()));
    }
  }

  private void strike(CrashClub club, CrashFault fault) throws Exception {
    AtomicBoolean on = new AtomicBoolean(true);
    List<Future<?>> working = new ArrayList<>();
    for (CrashClient each : clients) {
      working.add(
          threads.submit(
              () -> {
                each.work(on::get);
                return null;
              }));
    }
    Thread.sleep(500 + chance.nextInt(2_000));
    fault.strike(club, chance);
    struck.merge(fault, 1, Integer::sum);
    club.awaitReady();
    on.set(false);
    for (Future<?> each : working) {
      each.get(10, TimeUnit.MINUTES);
    }
  }

  private static void check(CrashClient client, CrashClient.Kept kept) {
    try {
      String path = "/api/v1/reports/" + kept.id;
      JsonNode report = CrashClient.read(client.insist(client.get(path), 200));
      assertEquals(kept.notes, report.get("notes").asText(), kept.id);
      Set<String> photos = new HashSet<>();
      for (JsonNode photo : report.get("photos")) {
        photos.add(photo.get("id").asText());
        String picture = photo.get("url").asText();
        assertTrue(client.insist(client.get(picture), 200).body().length() > 100, picture);
      }
      assertEquals(Set.copyOf(kept.photos), photos, kept.id);
      JsonNode history = CrashClient.read(client.insist(client.get(path + "/history"), 200));
      assertEquals(kept.steps, history.get("items").size(), "steps of " + kept.id);
    } catch (AssertionError e) {
      throw e;
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  /** The search finds the reports of a member that were acknowledged, and no other. */
  private static void nothingElse(CrashClient client) {
    try {
      Set<String> owed = new HashSet<>();
      client.kept.values().forEach(kept -> owed.add(kept.id));
      Set<String> found = new HashSet<>();
      int total = owed.size();
      for (int page = 0; page * 50 < total; page++) {
        String query = "/api/v1/reports?size=50&page=" + page + "&member=" + client.handle;
        JsonNode answer = CrashClient.read(client.insist(client.get(query), 200));
        total = answer.get("total").asInt();
        answer.get("hits").forEach(hit -> found.add(hit.get("id").asText()));
      }
      assertEquals(owed.size(), total, client.handle);
      assertEquals(owed, found, client.handle);
    } catch (java.io.IOException | InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  private int reports() {
    return clients.stream().mapToInt(each -> each.kept.size()).sum();
  }

  private void say(CrashClub club, long nanos) {
    int photos = 0;
    int steps = 0;
    Map<Integer, Integer> refusals = new TreeMap<>();
    for (CrashClient each : clients) {
      for (CrashClient.Kept kept : each.kept.values()) {
        photos += kept.photos.size();
        steps += kept.steps;
      }
      each.refusals.forEach((status, count) -> refusals.merge(status, count, Integer::sum));
    }
    System.out.printf(
        "%d cycles in %d s, seed %d: %s; %d starts of the program; acknowledged and found: %d"
            + " reports, %d photos, %d steps; passing refusals by status %s%n",
        CYCLES,
        nanos / 1_000_000_000L,
        SEED,
        struck,
        club.starts(),
        reports(),
        photos,
        steps,
        refusals);
  }

  private static void run(String... words) throws Exception {
    Process process = new ProcessBuilder(words).inheritIO().start();
    assertEquals(0, process.waitFor(), String.join(" ", words));
  }
}

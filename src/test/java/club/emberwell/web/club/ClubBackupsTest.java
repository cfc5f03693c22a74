package club.emberwell.web.club;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.keep.Backups;
import club.emberwell.keep.MadeNow;
import club.emberwell.keep.TwoStay;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Owners make, verify and download backups on a page and by programs, and see how old they are. */
@QuarkusTest
@TestProfile(TwoStay.class)
class ClubBackupsTest {
  private static final String API = "/api/v1/club/backups";
  private static final String PAGE = "/desk/club/backups";

  /** Many times what it takes; only tells what ends from what hangs. */
  private static final int MOST_LOOKS = 600;

  @Inject Staff staff;
  @Inject Backups backups;
  @Inject EntityManager db;

  private Person owner;

  @BeforeEach
  void nothingYet() throws Exception {
    MadeNow.awaitRest(backups);
    TwoStay.clear();
    run("delete from backup");
    owner = staff.person(Role.OWNER);
  }

  private void run(String sql) {
    QuarkusTransaction.requiringNew().run(() -> db.createNativeQuery(sql).executeUpdate());
  }

  /** Asks until something no longer runs. */
  private Response ended(String location, String field) throws InterruptedException {
    for (int look = 0; look < MOST_LOOKS; look++) {
      Response answer = owner.asks().get(location);
      if (answer.statusCode() == 200 && !"running".equals(answer.path(field))) {
        return answer;
      }
      Thread.sleep(100);
    }
    return fail(location + " goes on for ever");
  }

  /** One that was made by the API, as the API tells it. */
  private Response made() throws InterruptedException {
    String location =
        owner
            .asks()
            .post(API)
            .then()
            .statusCode(202)
            .header("Location", startsWith("http"))
            .header("Location", containsString(API + "/"))
            .body("state", equalTo("running"))
            .body("cause", equalTo("by-hand"))
            .extract()
            .header("Location");
    Response made = ended(location.replaceFirst("^https?://[^/]+", ""), "state");
    made.then().body("state", equalTo("kept"));
    return made;
  }

  @Test
  void aProgramMakesOneVerifiesItAndTakesItWithThePassword() throws Exception {
    owner.asks().get(API).then().body("caution", equalTo("There is no backup."));
    Response made = made();
    String one = API + "/" + made.path("id");
    owner
        .asks()
        .get(API)
        .then()
        .body("items", hasSize(1))
        .body("newest", equalTo(made.path("id")))
        .body("caution", equalTo(null))
        .body("schedule.on", equalTo(true))
        .body("schedule.at", equalTo("02:10"))
        .body("schedule.keep", equalTo(2))
        .body("schedule.path", equalTo(TwoStay.PLACE.toString()));

    owner
        .asks()
        .post(one + "/verifications")
        .then()
        .statusCode(202)
        .header("Location", endsWith(one))
        .body("verification.outcome", equalTo("running"));
    ended(one, "verification.outcome").then().body("verification.outcome", equalTo("good"));

    owner
        .asks()
        .body(Map.of())
        .post(one + "/archive")
        .then()
        .statusCode(401)
        .body("type", endsWith("/problems/confirmation-required"));
    owner
        .asks()
        .body(Map.of("password", "not this one at all"))
        .post(one + "/archive")
        .then()
        .statusCode(422);
    Response file = owner.asks().body(Map.of("password", People.PASSWORD)).post(one + "/archive");
    file.then()
        .statusCode(200)
        .contentType("application/zip")
        .header("Cache-Control", containsString("no-store"))
        .header("Content-Disposition", containsString(made.path("archive.name")));
    byte[] bytes = file.asByteArray();
    assertEquals(((Number) made.path("archive.bytes")).longValue(), bytes.length);
    assertSumsAreRight(bytes);

    owner
        .asks()
        .get("/api/v1/desk/audit?kind=backup&id=" + made.path("id"))
        .then()
        .body("items.action", hasItems("make-backup", "verify-backup", "download-backup"))
        .body("items", hasSize(3));
  }

  /** As {@code sha256sum -c SHA256SUMS} does, over an unpacked archive. */
  private static void assertSumsAreRight(byte[] archive) throws IOException {
    Map<String, String> sums = new TreeMap<>();
    String told = "";
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        byte[] member = zip.readAllBytes();
        if (entry.getName().equals("SHA256SUMS")) {
          told = new String(member, StandardCharsets.UTF_8);
        } else {
          sums.put(entry.getName(), DigestUtils.sha256Hex(member));
        }
      }
    }
    StringBuilder lines = new StringBuilder();
    sums.forEach((name, sum) -> lines.append(sum).append("  ").append(name).append('\n'));
    assertEquals(lines.toString(), told);
  }

  @Test
  void oneIsMadeAtATimeWhoeverAsks() throws Exception {
    UUID elsewhere = UUID.randomUUID();
    run(
        "insert into backup (id, cause, state, node, started_at, until) values ('%s', 'schedule',"
                .formatted(elsewhere)
            + " 'running', 'another', now(), now() + interval '1 minute')");
    owner
        .asks()
        .post(API)
        .then()
        .statusCode(202)
        .header("Location", endsWith(API + "/" + elsewhere))
        .body("cause", equalTo("schedule"));
    Browser browser = Browser.of(owner).get(PAGE);
    assertTrue(browser.page().text().contains("A backup has been running since"));
    assertTrue(browser.page().select("form[action=" + PAGE + "]").isEmpty(), "no button");
    assertEquals("5", browser.page().select("meta[http-equiv=refresh]").attr("content"));

    // that node dies
    run("update backup set until = now() - interval '1 second'");
    String told = browser.get(PAGE).page().text();
    assertTrue(told.contains("was not made: The server stopped while it was being made."), told);
    owner.asks().get(API + "/" + elsewhere).then().body("state", equalTo("died"));
    made();
    assertFalse(browser.get(PAGE).page().text().contains("was not made"));
  }

  @Test
  void theKeptAreBoundedAndTheFullDiskIsSaid() throws Exception {
    Path byHand = Files.createDirectories(TwoStay.PLACE.resolve("by-hand"));
    Response first = made();
    for (int day = 1; day <= 3; day++) {
      Path file = Path.of(first.<String>path("archive.path"));
      Files.copy(file, byHand.resolve("emberwell-club-2025010%dT000000Z.zip".formatted(day)));
    }
    Files.delete(Path.of(first.<String>path("archive.path")));
    backups.look();
    Response second = made();
    owner
        .asks()
        .get(API)
        .then()
        .body("items", hasSize(2))
        .body("items.archive.name", hasItems("emberwell-club-20250103T000000Z.zip"))
        .body("items.archive.name", hasItems(second.<String>path("archive.name")));
    TwoStay.clear();
    Files.createDirectories(TwoStay.PLACE);
    Files.createFile(byHand);
    String location = owner.asks().post(API).header("Location");
    ended(location.replaceFirst("^https?://[^/]+", ""), "state")
        .then()
        .body("state", equalTo("failed"))
        .body("failure", containsString("by-hand cannot be written"));
    String page = Browser.of(owner).get(PAGE).page().text();
    assertTrue(page.contains("was not made:") && page.contains("cannot be written"), page);
  }

  @Test
  void aDamagedOneIsNotCountedOn() throws Exception {
    Response made = made();
    Path file = Path.of(made.<String>path("archive.path"));
    byte[] bytes = Files.readAllBytes(file);
    bytes[bytes.length / 2] ^= 0x20;
    Files.write(file, bytes);
    String one = API + "/" + made.path("id");
    owner.asks().post(one + "/verifications").then().statusCode(202);
    ended(one, "verification.outcome")
        .then()
        .body("verification.outcome", equalTo("damaged"))
        .body("verification.detail", containsString("is damaged"));
    owner.asks().get(API).then().body("newest", equalTo(null));
    Browser browser = Browser.of(owner).get(PAGE).tidy();
    assertTrue(browser.page().text().contains("There is no backup."));
    assertTrue(browser.page().text().contains("Damaged, found"));
    Browser desk = browser.get("/desk");
    assertTrue(desk.page().select(".box-warn").text().contains("There is no backup."));
  }

  @Test
  void anotherMachinesFileIsSaidToLieThere() throws Exception {
    Response made = made();
    String one = API + "/" + made.path("id");
    run("update backup set node = 'shed-2', path = '/srv/there.zip'");
    owner.asks().post(one + "/verifications").then().statusCode(403);
    owner
        .asks()
        .body(Map.of("password", People.PASSWORD))
        .post(one + "/archive")
        .then()
        .statusCode(403)
        .body("type", endsWith("/problems/state-forbids"))
        .body("detail", containsString("shed-2 as /srv/there.zip"));
    Browser browser = Browser.of(owner).get(PAGE).tidy();
    assertTrue(browser.page().text().contains("On another machine: /srv/there.zip on shed-2."));
    assertTrue(browser.page().select("form[action$=archive]").isEmpty());
  }

  @Test
  void anOwnerDoesAllOfItOnThePage() throws Exception {
    Browser browser = Browser.of(owner).get(PAGE).tidy();
    assertTrue(browser.page().text().contains("No backups yet."));
    browser.send("main form[action=" + PAGE + "]", Map.of());
    assertEquals(303, browser.status());
    assertEquals(PAGE, browser.location());
    String id = owner.asks().get(API).path("items[0].id");
    Response made = ended(API + "/" + id, "state");
    Path file = Path.of(made.<String>path("archive.path"));

    browser.follow().tidy();
    String text = browser.page().text();
    assertTrue(text.contains("The newest good backup was made 1 min ago"), text);
    assertTrue(text.contains("Not verified yet."), text);
    assertTrue(text.contains(file.toString()), text);
    assertTrue(text.contains("every day at 02:10 UTC (EMBERWELL_BACKUP_AT)"), text);
    assertTrue(browser.page().select("pre").text().startsWith("emberwell restore --replace"));

    browser.send("main form[action$=verify]", Map.of());
    assertEquals(303, browser.status());
    ended(API + "/" + id, "verification.outcome");
    assertTrue(browser.follow().page().text().contains(": it can be restored."));

    // proved a moment ago, when this browser was signed in
    browser.send("main form[action$=archive]", Map.of());
    assertEquals(200, browser.status());
    assertEquals("application/zip", browser.header("Content-Type"));
    run("update session set confirmed_at = now() - interval '11 minutes'");
    browser.get(PAGE).send("main form[action$=archive]", Map.of());
    assertEquals(403, browser.status());
    browser.tidy();
    assertTrue(browser.page().text().contains("Please confirm that it is you"));
    browser.send("main form[action$=archive]", Map.of("confirm_", "not this one at all"));
    assertEquals(401, browser.status());
    browser.send("main form[action$=archive]", Map.of("confirm_", People.PASSWORD));
    assertEquals(200, browser.status());
    assertTrue(browser.header("Cache-Control").contains("no-store"));
    assertEquals(Long.toString(Files.size(file)), browser.header("Content-Length"));

    assertTrue(browser.get("/desk").page().text().contains("The newest backup was made 1 min ago"));
    Browser moderator = Browser.of(staff.person(Role.MODERATOR)).get("/desk");
    assertFalse(moderator.page().text().contains("backup"));
    moderator.get(PAGE);
    assertEquals(403, moderator.status());
    given().get(API).then().statusCode(401);
  }
}

package club.emberwell.exchange;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.ClosedClub;
import club.emberwell.api.member.Staff;
import club.emberwell.exchange.ErasureLedger.Entry;
import club.emberwell.exchange.Life.Lived;
import club.emberwell.exchange.PersonalData.Choice;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.club.ClubOptions.Door;
import club.emberwell.web.frame.Browser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.PersistenceException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Taking all one's data along, and being forgotten. */
@QuarkusTest
@TestProfile(ClosedClub.class)
class PersonalDataTest {
  @Inject Life life;
  @Inject Staff staff;
  @Inject ClubOptions club;
  @Inject ErasureLedger ledger;
  @Inject DataSource database;
  @Inject EntityManager db;
  @Inject ObjectMapper json;

  @BeforeEach
  void open() {
    club.door(Door.OPEN);
    club.readingPublic(true);
  }

  /** Every table as text, as a plain dump would hold it: where the needle stands. */
  private List<String> traces(String needle) throws SQLException {
    List<String> found = new ArrayList<>();
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement()) {
      List<String> tables = new ArrayList<>();
      try (ResultSet rows =
          statement.executeQuery(
              "select table_name from information_schema.tables where table_schema = 'public'"
                  + " and table_type = 'BASE TABLE'")) {
        while (rows.next()) {
          tables.add(rows.getString(1));
        }
      }
      for (String table : tables) {
        try (ResultSet rows =
            statement.executeQuery("select cast(t as text) from " + table + " t")) {
          while (rows.next()) {
            String row = rows.getString(1);
            if (row.toLowerCase(Locale.ROOT).contains(needle.toLowerCase(Locale.ROOT))) {
              found.add(table + ": " + (row.length() > 600 ? row.substring(0, 600) : row));
            }
          }
        }
      }
    }
    return found;
  }

  private static int erase(Person person, String choice) {
    return person
        .asks()
        .body(Map.of("choice", choice, "password", People.PASSWORD))
        .post("/api/v1/me/erasure")
        .statusCode();
  }

  @ParameterizedTest
  @ValueSource(strings = {"keep", "remove"})
  void afterErasureNoTableHoldsTheNameOrTheAddress(String choice) throws Exception {
    Lived lived = life.live();
    Person person = lived.person();
    assertTrue(traces(person.handle()).size() > 15, "the search finds nothing at all");
    assertTrue(traces(lived.email()).size() > 3);
    assertEquals(204, erase(person, choice));
    assertEquals(List.of(), traces(person.handle()));
    assertEquals(List.of(), traces(lived.email()));
    assertEquals(List.of(), traces("behind the mill"));
    person.asks().get("/api/v1/me").then().statusCode(401);
    People.json(Map.of("handle", person.handle(), "password", People.PASSWORD, "label", "again"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(401);
    assertTrue(ledger.entries().stream().anyMatch(e -> e.member().toString().equals(person.id())));
  }

  @Test
  void measurementsStayAsByAFormerMemberWhereThatWasChosen() throws Exception {
    Lived lived = life.live();
    erase(lived.person(), "keep");
    given()
        .get("/api/v1/reports/" + lived.report())
        .then()
        .statusCode(200)
        .body("member.handle", equalTo("former member"))
        .body("notes", nullValue())
        .body("photos.size()", equalTo(0))
        .body("effect", equalTo("right"));
    given()
        .get("/api/v1/reports/" + lived.repeat())
        .then()
        .statusCode(200)
        .body("repeatOf", equalTo(lived.report()))
        .body("notes", equalTo("Thanks, former member, works here too. former member was right."));
    given()
        .get("/api/v1/members/" + lived.person().id())
        .then()
        .body("handle", equalTo("former member"));
    assertEquals(0L, count("grid_photo join entry on id = grid_id", lived));
    assertEquals(0L, count("kept_photo join entry on id = entry_id", lived));
  }

  @Test
  void everythingGoesWhereThatWasChosenAndRepeatsOfOthersStandAlone() throws Exception {
    Lived lived = life.live();
    erase(lived.person(), "remove");
    given().get("/api/v1/reports/" + lived.report()).then().statusCode(404);
    given()
        .get("/api/v1/reports/" + lived.repeat())
        .then()
        .statusCode(200)
        .body("repeatOf", nullValue());
    assertEquals(0L, count("report join entry using (id)", lived));
    assertEquals(0L, count("machine", lived));
    assertEquals(0L, count("photo join entry using (id)", lived));
    assertEquals(0L, count("grid_photo join entry on id = grid_id", lived));
    assertEquals(1L, count("entry", lived), "the frame round the neighbour's answer");
  }

  private Object count(String table, Lived lived) {
    return db.createNativeQuery(
            "select count(*) from " + table + " where cast(member_id as text) = :member",
            Long.class)
        .setParameter("member", lived.person().id())
        .getSingleResult();
  }

  @Test
  void aNameThatIsAWordHereIsTakenOutOnlyWhereItIsMeantAsAName() throws Exception {
    String handle = "birch";
    People.json(Map.of("handle", handle, "password", People.PASSWORD))
        .post("/api/v1/members")
        .then()
        .statusCode(201);
    String token =
        People.json(Map.of("handle", handle, "password", People.PASSWORD, "label", "t"))
            .post("/api/v1/tokens")
            .path("token");
    Person other = People.join();
    Map<String, Object> report = new HashMap<>(Life.body());
    report.put(
        "laser",
        Map.of(
            "source", "co2",
            "wavelength", "10.6 um",
            "ratedPower", "40 W",
            "motion", "gantry",
            "regime", "cw"));
    report.put("notes", "Birch is fine, says @Birch, and @birchy too.");
    String id =
        Life.keyed(other, report)
            .post("/api/v1/reports")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    assertEquals(204, erase(new Person(handle, "", token, ""), "keep"));
    given()
        .get("/api/v1/reports/" + id)
        .then()
        .body("notes", equalTo("Birch is fine, says former member, and @birchy too."))
        .body("material.written", equalTo("birch plywood"));
  }

  @Test
  void aRestoredPersonIsForgottenAgainByTheLedger() throws Exception {
    Lived lived = life.live();
    UUID id = UUID.fromString(lived.person().id());
    erase(lived.person(), "keep");
    Entry entry =
        ledger.entries().stream().filter(e -> e.member().equals(id)).findFirst().orElseThrow();
    assertEquals(Choice.KEEP, entry.choice());
    // as an older backup would bring the person back, here with and there without the ledger's row
    for (boolean ledgerToo : new boolean[] {false, true}) {
      QuarkusTransaction.requiringNew()
          .run(
              () -> {
                db.createNativeQuery(
                        "update member set handle = :handle, email = :email, status = 'active'"
                            + " where id = :id")
                    .setParameter("handle", lived.person().handle())
                    .setParameter("email", lived.email())
                    .setParameter("id", id)
                    .executeUpdate();
                if (ledgerToo) {
                  execute("set local session_replication_role = replica");
                  db.createNativeQuery("delete from erasure where member_id = :id")
                      .setParameter("id", id)
                      .executeUpdate();
                }
              });
      assertEquals(1, ledgerToo ? ledger.replay(List.of(entry)) : ledger.replay());
      assertEquals(List.of(), traces(lived.person().handle()));
      assertEquals(0, ledger.replay());
    }
    assertEquals(
        entry.at(),
        ledger.entries().stream()
            .filter(e -> e.member().equals(id))
            .findFirst()
            .orElseThrow()
            .at());
  }

  @Test
  void theLogCannotBeChangedOutsideAnErasureAndNeverInWhatWasDone() {
    for (String sql :
        List.of(
            "update audit set reason = 'x'",
            "update audit set action = 'x'",
            "delete from audit",
            "truncate audit")) {
      assertThrows(
          PersistenceException.class,
          () -> QuarkusTransaction.requiringNew().run(() -> execute(sql)));
    }
    String erasing =
        "insert into erasure (member_id, choice, at) values (gen_random_uuid(), 'keep', now())";
    assertThrows(
        PersistenceException.class,
        () ->
            QuarkusTransaction.requiringNew()
                .run(
                    () -> {
                      execute(erasing);
                      execute("update audit set action = 'x'");
                    }));
  }

  private void execute(String sql) {
    db.createNativeQuery(sql).executeUpdate();
  }

  @Test
  void theLastOwnerCannotLeaveTheClubAlone() {
    QuarkusTransaction.requiringNew()
        .run(() -> execute("update member set role = 'member' where role = 'owner'"));
    Person owner = staff.person(Role.OWNER);
    assertEquals(403, erase(owner, "keep"));
    staff.person(Role.OWNER);
    assertEquals(204, erase(owner, "keep"));
  }

  @Test
  void aWrongPasswordAndAMissingChoiceAreRefusedAtTheirFields() {
    Person person = People.join();
    person
        .asks()
        .body(Map.of("choice", "keep", "password", "not mine at all"))
        .post("/api/v1/me/erasure")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/password"));
    person
        .asks()
        .body(Map.of("password", People.PASSWORD))
        .post("/api/v1/me/erasure")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/choice"));
    person.asks().get("/api/v1/me").then().statusCode(200);
  }

  @Test
  void theDownloadHoldsEverythingAndNothingOfOthersAndHasToPause() throws Exception {
    Lived lived = life.live();
    Map<String, byte[]> files =
        unzipped(
            lived
                .person()
                .asks()
                .get("/api/v1/me/data")
                .then()
                .statusCode(200)
                .contentType("application/zip")
                .header("Cache-Control", "no-store")
                .extract()
                .asByteArray());
    JsonNode account = json.readTree(files.get("account.json")).get(0);
    assertEquals(lived.email(), account.get("email").asText());
    assertFalse(account.has("password_hash"));
    JsonNode reports = json.readTree(files.get("reports.json"));
    assertEquals(1, reports.size());
    assertTrue(reports.get(0).get("written").get("notes").asText().contains("behind the mill"));
    assertEquals("400 mm/s", written(reports.get(0)));
    assertEquals(400.0, reports.get(0).at("/trials/0/settings/speed").asDouble());
    assertTrue(reports.get(0).get("revisions").size() >= 1);
    assertEquals(3, json.readTree(files.get("talk.json")).size());
    assertEquals(1, json.readTree(files.get("machines.json")).size());
    assertEquals(1, json.readTree(files.get("watches.json")).size());
    KeptThings.areIn(files, lived.report());
    assertEquals(1, json.readTree(files.get("flags.json")).size());
    assertEquals(2, files.keySet().stream().filter(f -> f.startsWith("photos/")).count());
    assertEquals(
        "By " + lived.person().handle(),
        json.readTree(files.get("photos.json")).get(0).get("caption").asText());
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      assertFalse(
          new String(file.getValue(), StandardCharsets.ISO_8859_1)
              .contains(lived.neighbour().handle()),
          file.getKey());
    }
    lived
        .person()
        .asks()
        .get("/api/v1/me/data")
        .then()
        .statusCode(429)
        .contentType("application/problem+json");
  }

  private static String written(JsonNode report) {
    return report
        .get("written")
        .get("trials")
        .get(0)
        .get("settings")
        .get("speed")
        .findValue("text")
        .asText();
  }

  private static Map<String, byte[]> unzipped(byte[] zip) throws IOException {
    Map<String, byte[]> files = new HashMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        files.put(entry.getName(), in.readAllBytes());
      }
    }
    return files;
  }

  @Test
  void theSameInABrowser() {
    Person person = People.join();
    Browser browser = Browser.of(person);
    browser.get("/me/rights").tidy();
    browser.send("main form", Map.of("choice", "keep", "password", People.PASSWORD));
    assertEquals(422, browser.status());
    browser.tidy();
    browser.send(
        "main form", Map.of("choice", "keep", "password", "wrong one here", "sure", "yes"));
    assertEquals(401, browser.status());
    browser
        .tidy()
        .send("main form", Map.of("choice", "keep", "password", People.PASSWORD, "sure", "yes"));
    assertEquals(303, browser.status());
    assertEquals("Farewell", browser.follow().tidy().page().selectFirst("h1").text());
    assertEquals(401, browser.get("/me").status());
  }
}

package club.emberwell.api.report;

import static club.emberwell.api.report.Bodies.keyed;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.entry.change.StoredChangeLog;
import club.emberwell.entry.change.StoredReaders;
import club.emberwell.member.Role;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reading everything by cursor, and keeping a copy of it, while others write. */
@QuarkusTest
class CopyApiTest {
  private static final String REPORTS = "/api/v1/reports";
  private static final String CHANGES = REPORTS + "/changes";
  private static final int SEED = 20261126;

  @Inject Staff staff;
  @Inject StoredChangeLog log;
  @Inject StoredReaders readers;
  @Inject DataSource database;

  /** A copy as a stranger would keep it: the version of each report by its id. */
  private static final class Copy {
    final Map<String, Integer> kept = new TreeMap<>();
    String cursor;

    /** Takes what changed, in small pages; answers how many rows came. */
    int update() {
      int rows = 0;
      JsonPath page;
      do {
        page =
            given()
                .queryParams(cursor == null ? Map.of("size", 7) : Map.of("cursor", cursor))
                .get(CHANGES)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        cursor = page.getString("next");
        List<Map<String, Object>> items = page.getList("items");
        items.forEach(this::take);
        rows += items.size();
      } while (!page.getList("items").isEmpty());
      return rows;
    }

    String end() {
      update();
      return cursor;
    }

    @SuppressWarnings("unchecked")
    private void take(Map<String, Object> item) {
      String id = (String) item.get("id");
      Map<String, Object> report = (Map<String, Object>) item.get("report");
      assertEquals(report == null, item.get("gone"), id);
      if (report == null) {
        kept.remove(id);
      } else {
        kept.put(id, (Integer) report.get("version"));
      }
    }
  }

  /** What strangers see of these reports, one by one. */
  private static Map<String, Integer> seen(Set<String> ids) {
    Map<String, Integer> found = new TreeMap<>();
    for (String id : ids) {
      var answer = given().get(REPORTS + "/" + id);
      if (answer.statusCode() == 200) {
        found.put(id, answer.path("version"));
      }
    }
    return found;
  }

  @Test
  void aCopyEqualsWhatIsPublicWhateverHappens() {
    Person moderator = staff.person(Role.MODERATOR);
    List<Person> people = new ArrayList<>(List.of(People.join(), People.join(), People.join()));
    Map<String, Person> authors = new HashMap<>();
    Random random = new Random(SEED);
    Copy copy = new Copy();
    copy.update();
    for (int round = 0; round < 60; round++) {
      List<String> ids = List.copyOf(new TreeMap<>(authors).keySet());
      int what = ids.size() < 5 ? 0 : random.nextInt(7);
      String id = ids.isEmpty() ? null : ids.get(random.nextInt(ids.size()));
      switch (what) {
        case 0, 1, 2 -> {
          Person author = people.get(random.nextInt(people.size()));
          authors.put(Bodies.post(author, different(round)), author);
        }
        case 3 -> revise(authors.get(id), id, different(round));
        case 4 -> authors.get(id).asks().delete(REPORTS + "/" + id);
        default -> decide(moderator, id, what == 5 ? "hold" : "restore");
      }
      if (round == 40) {
        erase(people.remove(0));
        people.add(People.join());
      }
      if (random.nextInt(4) == 0) {
        copy.update();
      }
    }
    copy.update();
    Map<String, Integer> now = seen(authors.keySet());
    Map<String, Integer> kept = new TreeMap<>(copy.kept);
    kept.keySet().retainAll(authors.keySet());
    assertEquals(now, kept);
    assertTrue(now.size() < authors.size(), "nothing went");
    assertEquals(0, copy.update(), "nothing has changed since");

    log.trim(Instant.now().plusSeconds(60));
    Copy late = new Copy();
    late.update();
    assertEquals(copy.kept, late.kept, "whoever begins later gets the same");
  }

  private static Map<String, Object> different(int round) {
    Map<String, Object> report = Bodies.report();
    report.put("notes", "Round " + round + " of " + UUID.randomUUID());
    return report;
  }

  private static void revise(Person author, String id, Map<String, Object> report) {
    String tag = author.asks().get(REPORTS + "/" + id).header("ETag");
    if (tag != null) {
      author.asks().header("If-Match", tag).body(report).put(REPORTS + "/" + id);
    }
  }

  private static void decide(Person moderator, String id, String action) {
    keyed(moderator, Map.of("action", action, "reason", "As the test wants it."))
        .post("/api/v1/desk/items/report/" + id + "/decisions");
  }

  private static void erase(Person person) {
    person
        .asks()
        .body(Map.of("choice", "remove", "password", People.PASSWORD))
        .post("/api/v1/me/erasure")
        .then()
        .statusCode(204);
  }

  @Test
  void onlyWhatIsNewerThanATimeIsAskedFor() {
    Person ada = People.join();
    Instant before = Instant.now();
    String id = Bodies.post(ada, different(0));
    // those of ten minutes before come too
    given()
        .queryParam("updatedAfter", before.plusSeconds(600).toString())
        .queryParam("size", 100)
        .get(CHANGES)
        .then()
        .statusCode(200)
        .body("items.find { it.id == '" + id + "' }.gone", equalTo(false));
    given()
        .queryParam("updatedAfter", Instant.now().plusSeconds(3600).toString())
        .get(CHANGES)
        .then()
        .body("items.size()", equalTo(0));
    given()
        .queryParam("updatedAfter", "yesterday")
        .get(CHANGES)
        .then()
        .statusCode(400)
        .body("errors[0].pointer", equalTo("/updatedAfter"));
  }

  @Test
  void aCopyOfBeforeARestoreIsToldToBeginAnew() {
    String cursor = given().get(CHANGES + "?size=1").path("next");
    log.startNewEpoch();
    List.of("rules", "watches").forEach(name -> readers.following(name, 1, c -> {}).some());
    given()
        .queryParam("cursor", cursor)
        .get(CHANGES)
        .then()
        .statusCode(410)
        .body("type", equalTo("/problems/copy-outdated"));
    Copy anew = new Copy();
    assertTrue(anew.update() > 0);
  }

  /** Put back while nobody looked: what the copy has seen last is not there any more. */
  @Test
  void aCopyThatIsAheadOfTheDatabaseIsToldToBeginAnew() throws SQLException {
    String from = new Copy().end();
    String id = Bodies.post(People.join(), Bodies.report());
    Copy copy = new Copy();
    copy.update();
    try (Connection connection = database.getConnection();
        PreparedStatement delete =
            connection.prepareStatement("delete from report_change where report_id = ?")) {
      delete.setObject(1, UUID.fromString(id));
      delete.executeUpdate();
    }
    given().queryParam("cursor", from).get(CHANGES).then().statusCode(200);
    given().queryParam("cursor", copy.cursor).get(CHANGES).then().statusCode(410);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "?size=3",
        "?size=3&sort=quality",
        "?size=3&sort=dose",
        "?size=3&q=plywood walked",
        "?size=3&q=plywood walked&sort=newest"
      })
  void aWalkThroughASearchMeetsEachReportOnceWhileOthersPost(String search) {
    Person ada = People.join();
    String mark = "walked";
    Set<String> before = new HashSet<>();
    for (int i = 0; i < 8; i++) {
      before.add(Bodies.post(ada, walked(mark, i)));
    }
    List<String> met = new ArrayList<>();
    String next = null;
    int round = 0;
    do {
      // her own only: what other tests posted may be more than a walk of bounded length reaches
      String hers = REPORTS + search + "&member=" + ada.handle();
      String address = hers + (next == null ? "" : "&cursor=" + next);
      JsonPath page = given().get(address).then().statusCode(200).extract().jsonPath();
      met.addAll(page.getList("hits.id"));
      next = page.getString("next");
      if (round < 4) {
        Bodies.post(ada, walked(mark, 100 + round));
      }
      round++;
    } while (next != null && round < 200);
    assertEquals(new HashSet<>(met).size(), met.size(), "one came twice");
    assertTrue(met.containsAll(before), "one is missing");
  }

  private static Map<String, Object> walked(String mark, int number) {
    Map<String, Object> report = different(number);
    report.put("notes", mark + " " + "plywood ".repeat(number % 4) + UUID.randomUUID());
    report.put("quality", 1 + number % 5);
    return report;
  }

  @ParameterizedTest
  @ValueSource(strings = {"questions", "lots", "samples", "grids"})
  void aWalkThroughAListMeetsEachOnceWhileOthersPost(String list) {
    Person ada = People.join();
    Set<String> before = new HashSet<>();
    for (int i = 0; i < 5; i++) {
      before.add(add(ada, list, i));
    }
    List<String> met = new ArrayList<>();
    String next = null;
    int round = 0;
    do {
      var answer =
          ada.asks()
              .queryParams(next == null ? Map.of("size", 2) : Map.of("size", 2, "cursor", next))
              .get("/api/v1/" + list);
      JsonPath page = answer.then().statusCode(200).extract().jsonPath();
      met.addAll(page.getList("items.id"));
      next = page.getString("next");
      assertEquals(next == null, answer.header("Link") == null);
      if (round < 3) {
        add(ada, list, 10 + round);
      }
      round++;
    } while (next != null && round < 200);
    assertEquals(new HashSet<>(met).size(), met.size(), "one came twice");
    assertTrue(met.containsAll(before), "one is missing");
    refusesForeignCursors(ada, list);
  }

  private static String add(Person who, String list, int number) {
    Map<String, Object> body =
        switch (list) {
          case "questions" ->
              Map.of("title", "Walk " + number + UUID.randomUUID(), "text", "Where does it end?");
          case "lots" -> lot(number);
          case "samples" -> Map.of("what", "Piece " + number, "place", "Box " + number);
          default -> grid();
        };
    return keyed(who, body).post("/api/v1/" + list).then().statusCode(201).extract().path("id");
  }

  private static Map<String, Object> lot(int number) {
    Map<String, Object> lot = new HashMap<>();
    lot.put("supplier", "North Blanks " + number);
    lot.put("material", "steel tumbler");
    lot.put("received", 40);
    if (number % 2 == 0) {
      lot.put("date", "2026-03-0" + (1 + number % 9));
    }
    return lot;
  }

  private static Map<String, Object> grid() {
    Map<String, Object> grid = new HashMap<>();
    grid.put("laser", Bodies.laser());
    grid.put("material", "birch plywood");
    grid.put("process", "surface-engraving");
    grid.put("settings", Bodies.settings());
    return grid;
  }

  private static void refusesForeignCursors(Person ada, String list) {
    String foreign = given().get(CHANGES + "?size=1").path("next");
    for (String cursor : List.of(foreign, "x", "%00", foreign.substring(1))) {
      ada.asks()
          .queryParam("cursor", cursor)
          .get("/api/v1/" + list)
          .then()
          .statusCode(400)
          .body("errors[0].pointer", equalTo("/cursor"));
    }
    for (String size : List.of("0", "101", "many")) {
      ada.asks()
          .queryParam("size", size)
          .get("/api/v1/" + list)
          .then()
          .statusCode(400)
          .body("errors[0].pointer", equalTo("/size"));
    }
  }

  @Test
  void aCursorOfAnotherSearchIsRefused() {
    Person ada = People.join();
    for (int i = 0; i < 3; i++) {
      Bodies.post(ada, different(i));
    }
    String next = given().get(REPORTS + "?size=1").path("next");
    assertFalse(next.isBlank());
    given().get(REPORTS + "?size=2&cursor=" + next).then().statusCode(200);
    for (String other : List.of("?q=oak&cursor=", "?sort=dose&cursor=", "?page=1&cursor=")) {
      given()
          .get(REPORTS + other + next)
          .then()
          .statusCode(400)
          .body("errors[0].pointer", equalTo("/cursor"));
    }
    assertEquals(
        Set.of("cursor"),
        given()
            .get(REPORTS + "?cursor=broken")
            .jsonPath()
            .getList("errors.pointer", String.class)
            .stream()
            .map(pointer -> pointer.substring(1))
            .collect(Collectors.toSet()));
  }
}

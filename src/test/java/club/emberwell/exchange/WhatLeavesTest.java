package club.emberwell.exchange;

import static club.emberwell.exchange.OpenFiles.csv;
import static club.emberwell.exchange.OpenFiles.post;
import static club.emberwell.exchange.OpenFiles.prefer;
import static club.emberwell.exchange.OpenFiles.row;
import static club.emberwell.exchange.OpenFiles.text;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.desk.Cast;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.exchange.open.DataFile;
import club.emberwell.exchange.open.PackageMaker;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.member.club.ClubOptions;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.hibernate.Session;
import org.junit.jupiter.api.Test;

/**
 * All that the club shares, as files: what is in them, what is not, and that strangers can read it.
 */
@QuarkusTest
class WhatLeavesTest {
  @Inject PackageMaker maker;
  @Inject Cast cast;
  @Inject Life life;
  @Inject Session db;
  @Inject Members members;
  @Inject EntryLife entries;
  @Inject Eraser eraser;
  @Inject ClubOptions club;

  @Test
  void aMemberChoosesTheLicenceOfWhatIsPostedFromThenOn() {
    Person person = People.join();
    String before = "/api/v1/reports/" + post(person, Map.of());
    person
        .asks()
        .header("If-Match", "\"0\"")
        .body(Map.of("numberStyle", "any", "licence", "CC-BY-SA-4.0", "named", false))
        .put("/api/v1/me/preferences")
        .then()
        .statusCode(200)
        .body("preferences.licence", equalTo("CC-BY-SA-4.0"))
        .body("preferences.named", equalTo(false));
    String after = "/api/v1/reports/" + post(person, Map.of());
    String clubs = club.card().dataLicence().code();
    person.asks().get(before).then().body("licence", equalTo(clubs));
    person.asks().get(after).then().body("licence", equalTo("CC-BY-SA-4.0"));
    person
        .asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("numberStyle", "any", "licence", "MIT"))
        .put("/api/v1/me/preferences")
        .then()
        .statusCode(400)
        .body("errors[0].pointer", equalTo("/licence"));
    // left out: as the club
    person
        .asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("numberStyle", "any"))
        .put("/api/v1/me/preferences")
        .then()
        .body("preferences.licence", equalTo(null))
        .body("preferences.named", equalTo(true));
    person.asks().get(after).then().body("licence", equalTo("CC-BY-SA-4.0"));
  }

  @Test
  void whatIsNotSharedNeverLeaves() throws Exception {
    Person author = People.join();
    String live = post(author, Map.of("notes", "word-live"));
    Map<String, String> hidden = new HashMap<>();
    for (String state : List.of("withdrawn", "held", "removed", "waiting")) {
      String id = post(author, Map.of("notes", "word-" + state));
      hidden.put(state, id);
    }
    author.asks().delete("/api/v1/reports/" + hidden.get("withdrawn")).then().statusCode(204);
    Actor moderator = cast.moderator();
    decide(moderator, hidden.get("held"), Decision.HOLD);
    decide(moderator, hidden.get("removed"), Decision.REMOVE);
    cast.run("update entry set state = 'waiting' where id = '%s'".formatted(hidden.get("waiting")));
    Person unnamed = People.join();
    prefer(unnamed, Map.of("numberStyle", "any", "licence", "CC0-1.0", "named", false));
    String nobodys = post(unnamed, Map.of("notes", "word-unnamed"));
    Person later = People.join();
    String before = post(later, Map.of("notes", "word-later"));
    prefer(later, Map.of("numberStyle", "any", "named", false));
    Life.Lived lived = life.live();
    maker.make();

    String all = everything();
    assertTrue(all.contains("word-live") && all.contains(live) && all.contains(author.handle()));
    hidden.forEach(
        (state, id) -> {
          assertFalse(all.contains("word-" + state), state);
          assertFalse(all.contains(id), state);
        });
    assertEquals("CC0-1.0", row(text("trials.csv"), nobodys).get("licence"));
    assertEquals("", row(text("trials.csv"), nobodys).get("author"));
    assertEquals("", row(text("trials.csv"), before).get("author"));
    for (Person person : List.of(unnamed, later)) {
      assertFalse(all.contains(person.handle()));
      assertFalse(all.contains(person.id()));
    }
    // a grid, a sample, a lot and a mail address were among the traces of that life
    assertTrue(all.contains(lived.report()));
    assertFalse(all.contains(lived.email()));
    for (String kind :
        List.of(
            "grid", "sample", "lot", "recipe", "eyewear", "room", "fixture", "question", "photo")) {
      ids(kind).forEach(id -> assertFalse(all.contains(id), kind));
    }
  }

  private List<String> ids(String kind) {
    return QuarkusTransaction.requiringNew()
        .call(
            () ->
                db.createNativeQuery(
                        "select cast(id as text) from entry where kind = :kind", String.class)
                    .setParameter("kind", kind)
                    .getResultList());
  }

  /** Every text of every file. */
  private String everything() {
    StringBuilder all = new StringBuilder();
    for (DataFile file : maker.newest().orElseThrow().files()) {
      all.append(text(file.name()));
    }
    return all.toString();
  }

  private void decide(Actor moderator, String report, Decision decision) {
    entries.decide(
        moderator, new EntryRef(EntryKind.REPORT, UUID.fromString(report)), decision, "Not so.");
  }

  @Test
  void whoLeavesAndWhatIsTakenBackIsOutOfTheDataAtTheNextLook() throws Exception {
    Life.Lived leaving = life.live();
    Person author = People.join();
    String report = post(author, Map.of());
    maker.make();
    UUID first = maker.newest().orElseThrow().id();
    maker.makeIfDue();
    assertEquals(first, maker.newest().orElseThrow().id(), "nothing happened, nothing is due");
    assertTrue(text("trials.csv").contains(leaving.person().handle()));

    eraser.erase(leaving.actor(members), UUID.randomUUID(), "keep", People.PASSWORD, "127.0.0");
    maker.makeIfDue();
    String without = everything();
    assertFalse(without.contains(leaving.person().handle()));
    assertEquals("", row(text("trials.csv"), leaving.report()).get("notes"));
    assertTrue(without.contains(leaving.report()), "the measurements stay, as was chosen");
    assertTrue(without.contains(report));

    author.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    maker.makeIfDue();
    assertFalse(everything().contains(report));
  }

  @Test
  void everyColumnOfTheDatabaseHasADecisionAboutLeaving() throws Exception {
    Set<String> there = new TreeSet<>(columns());
    Set<String> decided = new TreeSet<>();
    Set<String> given = new TreeSet<>();
    for (String[] line : decisions()) {
      String column = line[0] + "." + line[1];
      if (line[1].equals("*")) {
        there.stream().filter(c -> c.startsWith(line[0] + ".")).forEach(decided::add);
        assertTrue(line[2].startsWith("no: "), column);
      } else if (!line[0].isEmpty()) {
        assertTrue(decided.add(column), "twice: " + column);
      }
      assertTrue(line[2].matches("as .+|words|no: .+"), column + ": " + line[2]);
      if (line[2].startsWith("as ")) {
        given.addAll(List.of(line[2].substring(3).split(", ")));
      }
    }
    assertEquals(there, decided, "decide in open-data/decisions.csv what leaves the club");
    maker.make();
    assertEquals(new TreeSet<>(csv(text("trials.csv")).get(0)), given);
  }

  private List<String> columns() {
    return QuarkusTransaction.requiringNew()
        .call(
            () ->
                db.createNativeQuery(
                        """
                        select c.table_name || '.' || c.column_name
                        from information_schema.columns c
                        join information_schema.tables t using (table_schema, table_name)
                        where c.table_schema = 'public' and t.table_type = 'BASE TABLE'""",
                        String.class)
                    .getResultList());
  }

  private List<String[]> decisions() throws IOException {
    try (InputStream in = getClass().getResourceAsStream("/open-data/decisions.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(";", 3))
          .toList();
    }
  }
}

package club.emberwell.api.desk;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.launch.StatementCount;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Names of one supplier joined and parted over JSON, and what that does to its numbers. */
@QuarkusTest
class SupplierSpellingApiTest extends DeskCalls {
  private static final String PATH = "desk/supplier-spellings";

  /** Nobody else's in this database. */
  private final String name = "Blanks of " + UUID.randomUUID();

  private static String lot(Person by, String supplier, int received, int usable) {
    return lot(by, supplier, received, usable, body());
  }

  private static String lot(
      Person by, String supplier, int received, int usable, Map<String, Object> more) {
    Map<String, Object> lot =
        body(
            "supplier",
            supplier,
            "material",
            "slate",
            "received",
            received,
            "usable",
            usable,
            "shared",
            true);
    lot.putAll(more);
    return by.makes("lots", lot);
  }

  private String joined(String spelling, String supplier) {
    return post(
            moderator,
            PATH,
            body("spelling", spelling, "supplier", supplier, "reason", "One shop."))
        .statusCode(200)
        .extract()
        .path("code");
  }

  private void part(String code) {
    post(moderator, PATH + "/" + code + "/part", body("reason", "Two shops.")).statusCode(204);
  }

  private JsonPath found() {
    return get(member, "suppliers?q=" + name).statusCode(200).extract().jsonPath();
  }

  /** Name, members, usable, received, lower bound of each. */
  private List<List<Object>> told() {
    List<Map<String, Object>> items = found().getList("items");
    return items.stream()
        .map(
            one -> {
              Map<?, ?> pieces = (Map<?, ?>) one.get("pieces");
              return List.<Object>of(
                  one.get("name"),
                  one.get("members"),
                  pieces.get("usable"),
                  pieces.get("received"),
                  pieces.get("low"));
            })
        .toList();
  }

  @Test
  void joinedNamesCountAsTheLotsOfAllTheirMembersAndPartedOnesAsBefore() {
    String other = name + " Ltd";
    List<Person> people = Stream.generate(People::join).limit(5).toList();
    for (int i = 0; i < 3; i++) {
      lot(people.get(i), name, 50, 46);
      lot(people.get(i + 2), other, 40, 20 + i);
    }
    List<List<Object>> before = told();
    assertEquals(2, before.size());
    String code = joined(other, name);
    List<List<Object>> together = told();
    assertEquals(1, together.size());
    // the third member shares under both names and is one member
    assertEquals(List.of(name, 5, 201, 270), together.get(0).subList(0, 4));
    // R 4.2: prop.test(201, 270, correct = FALSE): 0.689241 to 0.792789
    assertEquals(0.689241, ((Number) together.get(0).get(4)).doubleValue(), 1e-6);
    String head = found().getString("items[0].code");
    get(member, "suppliers/" + code)
        .statusCode(200)
        .body("code", equalTo(head))
        .body("lots", equalTo(6))
        .body("spellings", contains(other))
        .body("blanks[0].members", equalTo(5));
    get(people.get(4), "lots").body("items[0].supplier", equalTo(other));
    part(code);
    assertEquals(before, told(), "exactly what it was");
    get(member, "suppliers/" + head).body("spellings", empty()).body("lots", equalTo(3));
    get(member, "suppliers/" + code).body("code", equalTo(code)).body("lots", equalTo(3));
  }

  @Test
  void aNameTooFewMembersWriteIsToldOfOnceItIsJoined() {
    String other = name + " & Co";
    lot(author, name, 10, 9);
    lot(member, name, 10, 9);
    lot(second, other, 10, 9);
    assertTrue(told().isEmpty());
    String code = joined(other, name);
    assertEquals(1, told().size());
    // how many to order: own lots of one name, those of others of all
    post(member, "lots/order", body("lines", List.of(body("pieces", 5)), "lots", other))
        .statusCode(200)
        .body("usable.lots", equalTo(1))
        .body("usable.sharedLots", equalTo(2));
    part(code);
    assertTrue(told().isEmpty());
  }

  @Test
  void aDriftIsSeenOverLotsOfAllNames() {
    String other = name + " Ltd";
    for (int i = 0; i < 4; i++) {
      Map<String, Object> more =
          body("batch", "B" + i, "date", "2026-0" + (i + 1) + "-01", "shared", false);
      lot(member, i % 2 == 0 ? name : other, 20, 19, more);
      burned(member, "B" + i, i % 2 == 0 ? other : name, i < 3 ? 400 + i : 300);
    }
    assertEquals(List.of(0, 0, 0, 0), get(member, "lots").extract().path("items.drift.earlier"));
    String code = joined(other, name);
    // the reports name the other spelling each
    assertEquals(List.of(3, 2, 1, 0), get(member, "lots").extract().path("items.drift.earlier"));
    part(code);
    assertEquals(List.of(0, 0, 0, 0), get(member, "lots").extract().path("items.drift.earlier"));
  }

  private static void burned(Person by, String batch, String supplier, double speed) {
    Map<String, Object> report = body();
    report.put(
        "laser",
        body("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry"));
    report.put("material", "slate");
    report.put("process", "surface-engraving");
    report.put(
        "settings", body("power", "60 %", "speed", speed + " mm/s", "lineSpacing", "0.1 mm"));
    report.put("effect", "right");
    report.put("lot", batch);
    report.put("supplier", supplier);
    report.put("notes", "Words of " + UUID.randomUUID());
    by.makes("reports", report);
  }

  /** Unicode 15, normalization form KC: full width letters, ligatures, no-break spaces. */
  @Test
  void formsOfOneCharacterCaseSpaceAndDotsAtTheEndAreOneName() {
    String full =
        name.chars()
            .map(c -> c > ' ' && c < 0x7f ? c + 0xFEE0 : 0x3000)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
    lot(author, name + " Ltd.", 10, 9);
    lot(member, full + "\u00a0\u00a0LTD", 10, 9);
    lot(second, " " + name.toUpperCase() + "  ltd .", 10, 9);
    assertEquals(1, told().size());
    assertEquals(
        1, get(member, "suppliers?q=" + full + " lTD..").extract().<List<?>>path("items").size());
    post(
            moderator,
            PATH,
            body("spelling", full + " LTD", "supplier", name + " Ltd.", "reason", "Same."))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/supplier"))
        .body("errors[0].detail", containsString("same name"));
  }

  @Test
  void noChainsAndNoCirclesAndFaultsStandAtTheirFields() {
    post(moderator, PATH, body("spelling", "x".repeat(81)))
        .statusCode(422)
        .body("errors.pointer", hasItems("/spelling", "/supplier", "/reason"));
    String b = joined(name + " b", name + " a");
    // what is said twice is said once
    assertEquals(b, joined(name + " B", name + " a"));
    refused(name + " b", name + " c", "/spelling", "already");
    refused(name + " a", name + " b", "/supplier", "spelling of");
    refused(name + " a", name + " c", "/spelling", "Other spellings");
    // by another spelling the name itself is meant
    String d = joined(name + " d", name + " b");
    get(moderator, PATH)
        .statusCode(200)
        .body("items[0].code", equalTo(d))
        .body("items[0].supplier", equalTo(name + " a"))
        .body("items[0].by", equalTo(moderator.handle()))
        .body("items[0].reason", equalTo("One shop."));
    String next = get(moderator, PATH + "?size=1").extract().path("next");
    get(moderator, PATH + "?size=1&cursor=" + next).body("items[0].code", equalTo(b));
    post(moderator, PATH + "/" + b + "/part", body())
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
    part(b);
    part(d);
    post(moderator, PATH + "/" + b + "/part", body("reason", "Again.")).statusCode(404);
    joined(name + " a", name + " c");
  }

  private void refused(String spelling, String supplier, String pointer, String says) {
    post(moderator, PATH, body("spelling", spelling, "supplier", supplier, "reason", "So."))
        .statusCode(422)
        .body("errors[0].pointer", equalTo(pointer))
        .body("errors[0].detail", containsString(says));
  }

  @Test
  void onlyModeratorsJoinAndTheLogTellsWho() {
    Map<String, Object> sent = body("spelling", name + " x", "supplier", name, "reason", "Same.");
    post(member, PATH, sent).statusCode(403);
    get(member, PATH).statusCode(403);
    String code = joined(name + " x", name);
    post(member, PATH + "/" + code + "/part", body("reason", "No.")).statusCode(403);
    part(code);
    get(moderator, "desk/audit?kind=supplier-spelling&id=" + code)
        .statusCode(200)
        .body("items.action", contains("part-supplier", "join-supplier"))
        .body("items.reason", contains("Two shops.", "One shop."))
        .body("items[0].detail.spelling", equalTo(name + " x"));
  }

  /** Who left is named no more; what they joined stays joined. */
  @Test
  void whatAModeratorJoinedStaysWhenTheyLeave() {
    String code = joined(name + " x", name);
    moderator
        .asks()
        .body(body("choice", "keep", "password", People.PASSWORD))
        .post("/api/v1/me/erasure")
        .then()
        .statusCode(204);
    get(second, PATH)
        .body("items.code", hasItem(code))
        .body("items.by", not(hasItem(moderator.handle())));
  }

  @Test
  void theListIsReadToItsEndInItsOrderWithAsManyStatementsAsOneRowTakes() {
    List<Person> three = List.of(author, member, second);
    IntStream.range(0, 5)
        .forEach(i -> three.forEach(by -> lot(by, name + " no " + i, 20, 15 + i % 3)));
    List<String> read = new ArrayList<>();
    String cursor = "";
    while (cursor != null) {
      JsonPath page =
          get(member, "suppliers?size=2&q=" + name + "&cursor=" + cursor)
              .statusCode(200)
              .extract()
              .jsonPath();
      read.addAll(page.getList("items.name"));
      cursor = page.getString("next");
    }
    assertEquals(found().getList("items.name"), read);
    assertEquals(5, read.size());
    List<Float> low = found().getList("items.pieces.low");
    assertEquals(low.stream().sorted((a, b) -> Float.compare(b, a)).toList(), low);
    int one = StatementCount.ofRequests(() -> get(member, "suppliers?size=1&q=" + name)).size();
    int all = StatementCount.ofRequests(() -> get(member, "suppliers?q=" + name)).size();
    assertEquals(one, all);
    get(member, "suppliers?q=" + name + "%25").body("items", empty());
    get(member, "suppliers?q=" + "x".repeat(81))
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/q"));
    get(member, "suppliers?cursor=nonsense").statusCode(400);
  }
}

package club.emberwell.exchange.bench;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.sql.Connection;
import java.sql.Statement;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import javax.sql.DataSource;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A bench is saved, wiped and restored; what a stranger's tools make of the file. */
@QuarkusTest
class BenchCopyTest {
  @Inject DataSource database;

  private Person ada;
  private Person eve;

  @BeforeEach
  void join() {
    ada = People.join();
    eve = People.join();
  }

  static byte[] save(Person by) {
    return by.asks().get("/api/v1/bench/copy").then().statusCode(200).extract().asByteArray();
  }

  static Response restore(Person by, byte[] copy, boolean preview) {
    return given()
        .header("Authorization", "Bearer " + by.token())
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .contentType("application/zip")
        .queryParam("preview", preview)
        .body(copy)
        .post("/api/v1/bench/copy");
  }

  static List<String> fates(Response outcome) {
    return outcome.then().statusCode(200).extract().path("things.fate");
  }

  /** As if the disk had been lost: no row of the bench is left, nor that there ever was one. */
  private void wipe(Person owner) throws Exception {
    try (Connection connection = database.getConnection();
        Statement statement = connection.createStatement()) {
      connection.setAutoCommit(false);
      statement.execute(
          """
          insert into erasure (member_id, choice, at) values (gen_random_uuid(), 'keep', now());
          create temporary table gone on commit drop as select id from entry
            where member_id = '%1$s' and kind not in ('report', 'photo');
          delete from tag where entry_id in (select id from gone);
          delete from entry_revision where entry_id in (select id from gone);
          delete from entry where id in (select id from gone);
          delete from machine where member_id = '%1$s';
          """
              .formatted(owner.id()));
      connection.commit();
    }
  }

  @Test
  void aBenchIsSavedWipedRestoredAndEqual() throws Exception {
    FilledBench bench = FilledBench.of(ada, eve);
    byte[] copy = save(ada);
    Map<String, Object> before = bench.seen(ada, bench.ids);
    wipe(ada);
    ada.asks().get("/api/v1/machines").then().body("items.size()", equalTo(0));

    Response preview = restore(ada, copy, true);
    preview
        .then()
        .statusCode(200)
        .body("preview", equalTo(true))
        .body("things.fate", everyItem(equalTo("new")))
        .body("photos.restored", equalTo(3))
        .body("things.sentences.flatten().size()", equalTo(0));
    ada.asks().get("/api/v1/machines").then().body("items.size()", equalTo(0));

    Response done = restore(ada, copy, false);
    done.then()
        .statusCode(200)
        .body("things.fate", everyItem(equalTo("new")))
        .body("things.size()", equalTo(((List<?>) preview.path("things")).size()))
        .body("photos.restored", equalTo(3))
        .body("photos.left", equalTo(0))
        .body("photos.sentences.size()", equalTo(0));
    assertEquals(withoutPhotos(before), withoutPhotos(bench.seen(ada, bench.ids)));
    assertSame(copy, save(ada));

    assertEquals(List.of("alike"), fates(restore(ada, copy, false)).stream().distinct().toList());
    assertSame(copy, save(ada));
  }

  /** Where a picture is, and when it came, is new; its size is not. */
  private static String withoutPhotos(Map<String, Object> seen) {
    return new com.google.gson.Gson()
        .toJson(seen)
        .replaceAll("\"(takenAt|shown|uploadedAt|number)\":(\"[^\"]*\"|[0-9.]+)", "\"$1\":0");
  }

  /** The same but for when it was saved, and the bytes of photos, which are encoded anew. */
  private static void assertSame(byte[] before, byte[] after) throws IOException {
    Map<String, byte[]> was = new TreeMap<>(Zips.files(before));
    Map<String, byte[]> is = new TreeMap<>(Zips.files(after));
    assertEquals(was.keySet(), is.keySet());
    for (String name : was.keySet()) {
      if (name.equals("bench.html")) {
        assertEquals(
            Zips.text(was, name).replaceFirst("Saved [^ ]+", ""),
            Zips.text(is, name).replaceFirst("Saved [^ ]+", ""));
      } else if (!name.equals("manifest.json") && !name.startsWith("pictures/")) {
        assertEquals(Zips.text(was, name), Zips.text(is, name), name);
      }
    }
  }

  @Test
  void settingsLeaveWithTheirCaution() throws Exception {
    FilledBench bench = FilledBench.of(ada, eve);
    Map<String, Object> coated = new HashMap<>();
    coated.put("name", "Tumbler");
    coated.put("machine", bench.ids.get(BenchKind.MACHINE));
    coated.put("material", "stainless steel");
    coated.put("coating", "powder coat");
    coated.put("process", "coating-removal");
    coated.put("settings", Map.of("power", "70 %", "speed", "30 mm/s", "lineSpacing", "0.1 mm"));
    ada.makes("recipes", coated);
    Map<String, byte[]> files = Zips.files(save(ada));
    JsonObject line =
        Zips.lines(files, BenchKind.RECIPE).stream()
            .filter(each -> each.get("name").getAsString().equals("Tumbler"))
            .findFirst()
            .orElseThrow();
    String caution = line.get("caution").getAsString();
    assertTrue(caution.startsWith("Caution, "), caution);
    assertTrue(Zips.text(files, "bench.html").contains("<strong>" + caution + "</strong>"));
  }

  @Test
  void theFileIsWhatItsListAndItsSchemasSay() throws Exception {
    FilledBench.of(ada, eve);
    Map<String, byte[]> files = Zips.files(save(ada));
    JsonObject manifest =
        JsonParser.parseString(Zips.text(files, "manifest.json")).getAsJsonObject();
    assertEquals("emberwell-bench", manifest.get("format").getAsString());
    assertEquals(1, manifest.get("version").getAsInt());
    assertEquals(ada.handle(), manifest.get("member").getAsString());
    assertEquals(files.size() - 1, manifest.getAsJsonArray("files").size());
    for (var one : manifest.getAsJsonArray("files")) {
      JsonObject part = one.getAsJsonObject();
      byte[] bytes = files.get(part.get("name").getAsString());
      assertEquals(bytes.length, part.get("bytes").getAsLong());
      assertEquals(Zips.sha256(bytes), part.get("sha256").getAsString());
    }
    JsonSchemaFactory factory =
        JsonSchemaFactory.getInstance(
            SpecVersion.VersionFlag.V202012,
            all ->
                all.schemaLoaders(
                    loaders ->
                        loaders.schemas(
                            at ->
                                at.startsWith("https://emberwell.club/schemas/bench/")
                                    ? Zips.text(
                                        files, "schema/" + at.substring(at.lastIndexOf('/') + 1))
                                    : null)));
    for (BenchKind kind : BenchKind.values()) {
      JsonSchema schema =
          factory.getSchema(
              SchemaLocation.of(
                  "https://emberwell.club/schemas/bench/" + kind.code() + ".schema.json"));
      List<JsonObject> lines = Zips.lines(files, kind);
      assertFalse(lines.isEmpty(), kind.code());
      for (JsonObject line : lines) {
        assertEquals(
            List.of(),
            List.copyOf(schema.validate(line.toString(), InputFormat.JSON)),
            line::toString);
      }
      JsonObject wrong = lines.get(0).deepCopy();
      wrong.getAsJsonObject("written").addProperty("nobodyKnows", 1);
      assertFalse(
          schema.validate(wrong.toString(), InputFormat.JSON).isEmpty(), "any field is right");
    }
  }

  @Test
  void theReadableCopyHasNoScriptAndShowsWordsAsWords() throws Exception {
    FilledBench.of(ada, eve);
    String html = Zips.text(Zips.files(save(ada)), "bench.html");
    Document page = Jsoup.parse(html);
    assertEquals(
        0, page.select("script, iframe, object, form, link, b, [onload], [onerror]").size());
    assertEquals("Bench of " + ada.handle(), page.title());
    String text = page.text();
    assertTrue(text.contains("Coasters " + FilledBench.ODD), text);
    assertTrue(text.contains("Too pale"), text);
    assertTrue(text.contains("OD 6 @ 900-1100 nm"), text);
    for (BenchKind kind : BenchKind.values()) {
      assertTrue(text.contains(kind.label() + " ("), kind.label());
    }
    assertEquals(3, page.select("img").size());
  }

  @Test
  void anotherMemberGetsTheirOwnWithAllThatNamesEachOther() throws Exception {
    FilledBench bench = FilledBench.of(ada, eve);
    byte[] copy = save(ada);
    Person bea = People.join();
    Response done = restore(bea, copy, false);
    List<Map<String, Object>> things = done.then().statusCode(200).extract().path("things");
    Map<BenchKind, String> under = new EnumMap<>(BenchKind.class);
    for (Map<String, Object> thing : things) {
      assertEquals("new", thing.get("fate"), thing::toString);
      assertNotEquals(thing.get("was"), thing.get("id"));
      for (BenchKind kind : BenchKind.values()) {
        if (bench.ids.get(kind).equals(thing.get("was"))) {
          under.put(kind, (String) thing.get("id"));
        }
      }
    }
    String machine = under.get(BenchKind.MACHINE);
    bea.asks()
        .get("/api/v1/recipes/" + under.get(BenchKind.RECIPE))
        .then()
        .body("written.machine", equalTo(machine))
        .body("written.cameFrom.report", equalTo(bench.report))
        .body("version", equalTo(3));
    bea.asks()
        .get("/api/v1/rooms/" + under.get(BenchKind.ROOM))
        .then()
        .body("machines", hasItem(machine));
    bea.asks()
        .get("/api/v1/samples/" + under.get(BenchKind.SAMPLE))
        .then()
        .body("grid", equalTo(under.get(BenchKind.GRID)));
    List<List<String>> sentences = done.path("things.sentences");
    assertTrue(
        sentences.stream()
            .flatMap(List::stream)
            .anyMatch(s -> s.contains("results are in a report")),
        sentences::toString);
    assertEquals(List.of("alike"), fates(restore(bea, copy, false)).stream().distinct().toList());
    // whose it was sees nothing of it
    assertEquals(List.of("alike"), fates(restore(ada, copy, true)).stream().distinct().toList());
    ada.asks().get("/api/v1/recipes/" + under.get(BenchKind.RECIPE)).then().statusCode(404);
  }

  @Test
  void whatWasChangedSinceStaysAndThatOfTheCopyComesBeside() throws Exception {
    String id = ada.makes("fixtures", Map.of("name", "Jig", "rows", 1, "columns", 1));
    String lost = ada.makes("eyewear", Map.of("name", "Pair", "marking", "OD 6 @ 900-1100 nm"));
    byte[] copy = save(ada);
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("name", "Jig", "rows", 2, "columns", 2, "pitchX", "5 mm", "pitchY", "5 mm"))
        .put("/api/v1/fixtures/" + id)
        .then()
        .statusCode(200);
    ada.asks().delete("/api/v1/eyewear/" + lost).then().statusCode(204);
    String day = java.time.LocalDate.now(java.time.ZoneOffset.UTC).toString();
    String beside = "Jig (copy of %s)".formatted(day);
    restore(ada, copy, true)
        .then()
        .body("things.fate", equalTo(List.of("beside", "beside")))
        .body("things.name", equalTo(List.of(beside, "Pair")));
    restore(ada, copy, false).then().statusCode(200);
    restore(ada, copy, false)
        .then()
        .body("things.fate", equalTo(List.of("alike", "alike")))
        .body("counts.find { it.kind == 'fixture' }.alike", equalTo(1));
    ada.asks()
        .get("/api/v1/fixtures")
        .then()
        .body("items.title.sort()", equalTo(List.of("Jig", beside)))
        .body("items.find { it.title == 'Jig' }.rows", equalTo(2));
    ada.asks().get("/api/v1/eyewear").then().body("items.name", equalTo(List.of("Pair")));
  }

  @Test
  void theSameKeyAnswersTheSameAndAnEmptyBenchIsACopyToo() throws Exception {
    byte[] copy = save(eve);
    String key = UUID.randomUUID().toString();
    for (int i = 0; i < 2; i++) {
      given()
          .header("Authorization", "Bearer " + eve.token())
          .header("Idempotency-Key", key)
          .contentType("application/zip")
          .body(copy)
          .post("/api/v1/bench/copy")
          .then()
          .statusCode(200)
          .body("things.size()", equalTo(0));
    }
    assertArrayEquals(new byte[0], Zips.files(copy).get("recipes.jsonl"));
  }
}

package club.emberwell.exchange.bench;

import static club.emberwell.exchange.bench.BenchCopyTest.restore;
import static club.emberwell.exchange.bench.BenchCopyTest.save;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Files that were changed, forged or never were copies: a sentence, and nothing written. */
@QuarkusTest
class HostileCopyTest {
  private Person ada;
  private Person eve;
  private byte[] copy;

  @BeforeEach
  void saveOne() throws IOException {
    ada = People.join();
    eve = People.join();
    ada.makes("fixtures", Map.of("name", "Jig", "rows", 1, "columns", 1));
    copy = save(ada);
  }

  /** Refused as a whole. */
  private void refused(byte[] file, String sentence) {
    for (boolean preview : new boolean[] {true, false}) {
      restore(eve, file, preview)
          .then()
          .statusCode(422)
          .contentType("application/problem+json")
          .body("errors[0].pointer", equalTo("/file"))
          .body("errors[0].detail", containsString(sentence));
    }
    nothingIsThere();
  }

  private void nothingIsThere() {
    for (BenchKind kind : BenchKind.values()) {
      eve.asks()
          .get("/api/v1/" + FilledBench.path(kind))
          .then()
          .statusCode(200)
          .body("items.size()", equalTo(0));
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void whatIsNoCopyIsSaidToBeNone() throws Exception {
    refused(bytes("hello"), "no zip file");
    refused(new byte[0], "no zip file");
    byte[] random = new byte[100_000];
    new Random(7).nextBytes(random);
    refused(random, "no zip file");
    refused(Zips.zip(Map.of("a.txt", bytes("a"))), "no manifest.json");
    refused(Zips.zip(Map.of("manifest.json", bytes("[1"))), "manifest.json cannot be read");
    refused(Zips.zip(Map.of("manifest.json", bytes("{\"format\":\"x\"}"))), "another format");
    refused(Arrays.copyOf(copy, copy.length / 2), "no zip file");
    // all of a member's data is another file
    byte[] data = eve.asks().get("/api/v1/me/data").then().statusCode(200).extract().asByteArray();
    refused(data, "no manifest.json");
  }

  @Test
  void whatWasChangedOrIsNewerIsRefused() throws Exception {
    Map<String, byte[]> files = Zips.files(copy);
    files.put("fixtures.jsonl", bytes(Zips.text(files, "fixtures.jsonl").replace("Jig", "Jag")));
    refused(Zips.zip(files), "the sum of fixtures.jsonl is wrong");
    files = Zips.files(copy);
    files.remove("fixtures.jsonl");
    refused(Zips.zip(files), "not those that manifest.json names");
    files = Zips.files(copy);
    files.put("more.jsonl", bytes("{}\n"));
    refused(Zips.zip(files), "not those that manifest.json names");
    files = Zips.files(copy);
    String manifest = Zips.text(files, "manifest.json");
    files.put("manifest.json", bytes(manifest.replaceFirst("\"version\" : 1", "\"version\" : 2")));
    refused(Zips.zip(files), "written by a newer server");
    files.put(
        "manifest.json", bytes("{\"format\":\"emberwell-bench\",\"version\":1,\"files\":[null]}"));
    refused(Zips.zip(files), "lacks its version or its list");
  }

  @Test
  void pathsLeadNowhereAndNothingStandsTwice() throws Exception {
    for (String name :
        new String[] {
          "../../etc/cron.d/x", "/etc/passwd", "pictures/../../x.jpg", "a\\b", "x.sh"
        }) {
      refused(Zips.with(copy, name, bytes("x")), "under a name that no copy has");
    }
    // the JDK writes no name twice, so one is changed in the bytes, in both places it stands
    byte[] twice = Zips.with(copy, "fixturesb.jsonl", bytes("{}\n"));
    String latin = new String(twice, StandardCharsets.ISO_8859_1);
    byte[] forged =
        latin.replace("fixturesb.jsonl", "manifesta.json").getBytes(StandardCharsets.ISO_8859_1);
    assertFalse(Arrays.equals(twice, forged));
    restore(eve, forged, false).then().statusCode(422);
    nothingIsThere();
  }

  /** 40 MB of zeros in 40 kB: it is not unpacked, whatever it says of its size. */
  @Test
  void aBombIsNotUnpacked() throws Exception {
    byte[] zeros = new byte[40_000_000];
    refused(Zips.with(copy, "lots.jsonl", zeros), "too large");
    Map<String, byte[]> files = Zips.files(Zips.with(copy, "lots.jsonl", new byte[10]));
    files.put("lots.jsonl", zeros);
    refused(Zips.zip(files), "the sum of lots.jsonl is wrong");
    byte[] page = Zips.zip(Map.of("manifest.json", bytes(claims(9))));
    refused(page, "not those that manifest.json names");
    Map<String, byte[]> photos = new java.util.TreeMap<>();
    for (int i = 0; i < 70; i++) {
      photos.put(photo(i), new byte[0]);
    }
    photos.put("manifest.json", bytes(claims(70)));
    refused(Zips.zip(photos), "unpacked it has more than");
  }

  private static String photo(int i) {
    return "pictures/lots/%s.jpg".formatted(new UUID(0, i));
  }

  /** So many photos of 10 MB. */
  private static String claims(int photos) {
    StringBuilder files = new StringBuilder();
    for (int i = 0; i < photos; i++) {
      files.append(i == 0 ? "" : ",").append("{\"name\":\"").append(photo(i));
      files.append("\",\"bytes\":10000000,\"sha256\":\"0\"}");
    }
    return "{\"format\":\"emberwell-bench\",\"version\":1,\"files\":[%s]}".formatted(files);
  }

  @Test
  void tooManyFilesLinesOrBytesOfALineAreRefused() throws Exception {
    ByteArrayOutputStream many = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(many)) {
      for (int i = 0; i < 6000; i++) {
        out.putNextEntry(new ZipEntry("pictures/lots/%s.jpg".formatted(new UUID(0, i))));
        out.closeEntry();
      }
    }
    refused(many.toByteArray(), "too many files");
    refused(
        Zips.with(copy, "lots.jsonl", bytes("{}\n".repeat(1_000_000))), "more than 3,000 lines");
    refused(
        Zips.with(copy, "lots.jsonl", bytes("{\"a\":\"" + "x".repeat(4_100_000) + "\"}\n")),
        "a line of more than");
  }

  private JsonObject fixture() throws IOException {
    return Zips.lines(Zips.files(copy), BenchKind.FIXTURE).get(0);
  }

  /** One changed line beside the right one, which is restored all the same. */
  private void oneIsRefused(Consumer<JsonObject> change, String sentence) throws IOException {
    JsonObject wrong = fixture();
    wrong.addProperty("id", UUID.randomUUID().toString());
    change.accept(wrong);
    Response done =
        restore(eve, Zips.with(copy, BenchKind.FIXTURE, List.of(wrong, fixture())), true);
    done.then().statusCode(200);
    assertEquals(List.of("refused", "new"), done.path("things.fate"), sentence);
    String said = done.path("things[0].sentences").toString();
    assertTrue(said.contains(sentence), said);
  }

  private static JsonObject written(JsonObject line) {
    return line.getAsJsonObject("written");
  }

  /** In both places where the newest words stand. */
  private static void say(JsonObject line, String field, Object value) {
    for (JsonObject words :
        List.of(
            written(line), written(line.getAsJsonArray("revisions").get(0).getAsJsonObject()))) {
      words.add(field, new com.google.gson.Gson().toJsonTree(value));
    }
  }

  @Test
  void aLineThatCannotBeIsRefusedAloneWithWhy() throws Exception {
    oneIsRefused(line -> line.addProperty("kind", "room"), "kind");
    oneIsRefused(line -> line.addProperty("id", "../../x"), "no id");
    oneIsRefused(line -> line.remove("written"), "no words");
    oneIsRefused(line -> line.addProperty("createdAt", "2999-01-01T00:00:00Z"), "no time");
    oneIsRefused(line -> line.addProperty("updatedAt", "yesterday"), "no time");
    oneIsRefused(line -> line.addProperty("numberStyle", "roman"), "numberStyle");
    oneIsRefused(line -> line.remove("revisions"), "newest revision");
    oneIsRefused(line -> written(line).addProperty("name", "Other"), "newest revision");
    oneIsRefused(line -> line.addProperty("state", "removed"), "does not follow");
    oneIsRefused(
        line ->
            line.getAsJsonArray("revisions")
                .get(0)
                .getAsJsonObject()
                .addProperty("action", "approved"),
        "no action");
    // the same checks as on a page
    oneIsRefused(line -> say(line, "name", "x".repeat(81)), "/name");
    oneIsRefused(line -> say(line, "rows", 0), "/rows");
    oneIsRefused(line -> say(line, "pitchX", Map.of("text", "five apples")), "/pitchX");
    oneIsRefused(line -> say(line, "rows", Map.of("a", 1)), "another shape");
    oneIsRefused(
        line -> {
          JsonArray nothing = new JsonArray();
          nothing.add(JsonNull.INSTANCE);
          say(line, "extra", nothing);
        },
        "nothing in one place");
  }

  @Test
  void textThatIsNoJsonAndIdsTwiceAreRefusedByTheirLine() throws Exception {
    String line = fixture().toString();
    String deep = "[".repeat(500) + "]".repeat(500);
    byte[] file =
        Zips.with(
            copy,
            "fixtures.jsonl",
            bytes(
                line
                    + "\n"
                    + line
                    + "\nno JSON\n"
                    + deep
                    + "\n[1]\n\"\u0000\"\n{\"a\":1,\"a\":2}\n"));
    restore(eve, file, false)
        .then()
        .statusCode(200)
        .body(
            "things.fate",
            equalTo(
                List.of("new", "refused", "refused", "refused", "refused", "refused", "refused")))
        .body("things.line", equalTo(List.of(1, 2, 3, 4, 5, 6, 7)))
        .body("things[1].sentences[0]", containsString("twice"));
    eve.asks().get("/api/v1/fixtures").then().body("items.title", equalTo(List.of("Jig")));
  }

  @Test
  void htmlInNamesIsText() throws Exception {
    JsonObject line = fixture();
    say(line, "name", "<img src=x onerror=alert(1)>");
    line.addProperty("name", "<img src=x onerror=alert(1)>");
    restore(eve, Zips.with(copy, BenchKind.FIXTURE, List.of(line)), false).then().statusCode(200);
    String html = Zips.text(Zips.files(save(eve)), "bench.html");
    assertFalse(html.contains("<img src=x"), html);
    assertTrue(html.contains("&lt;img src=x onerror=alert(1)&gt;"), html);
  }

  @Test
  void picturesThatAreNoneAreNotKept() throws Exception {
    for (String bytes : new String[] {"GIF89a", "\u00ff\u00d8\u00ff and then no picture"}) {
      JsonObject line = fixture();
      String name = "pictures/fixtures/%s.jpg".formatted(line.get("id").getAsString());
      JsonObject picture = new JsonObject();
      picture.addProperty("file", name);
      line.add("picture", picture);
      byte[] forged =
          Zips.with(
              Zips.with(copy, BenchKind.FIXTURE, List.of(line)),
              name,
              bytes.getBytes(StandardCharsets.ISO_8859_1));
      Response done = restore(eve, forged, false);
      done.then()
          .statusCode(200)
          .body("photos.restored", equalTo(0))
          .body("photos.sentences[0]", containsString("The photo of Jig"));
      eve.asks()
          .get("/api/v1/fixtures/" + done.path("things[0].id") + "/photo")
          .then()
          .statusCode(404);
    }
  }

  @Test
  void idsOfOthersLeadNowhere() throws Exception {
    String machine = ada.makes("machines", machine("Hers"));
    String hidden = ada.makes("eyewear", Map.of("name", "Hers", "marking", "OD 6 @ 900-1100 nm"));
    // of the copier: a room on somebody else's machine
    String room = eve.makes("rooms", Map.of("name", "Mine", "volume", "60 m3"));
    JsonObject line = Zips.lines(Zips.files(save(eve)), BenchKind.ROOM).get(0);
    line.addProperty("id", hidden);
    JsonArray machines = new JsonArray();
    machines.add(machine);
    for (JsonObject words :
        List.of(
            written(line), written(line.getAsJsonArray("revisions").get(0).getAsJsonObject()))) {
      words.add("machines", machines);
      words.addProperty("name", "Forged");
    }
    Response done = restore(eve, Zips.with(copy, BenchKind.ROOM, List.of(line)), false);
    done.then()
        .statusCode(200)
        .body("things.find { it.kind == 'room' }.fate", equalTo("new"))
        .body(
            "things.find { it.kind == 'room' }.sentences",
            hasItem(containsString("The machine it names is not here")));
    String id = done.path("things.find { it.kind == 'room' }.id");
    assertFalse(List.of(hidden, room).contains(id));
    eve.asks().get("/api/v1/rooms/" + id).then().body("machines.size()", equalTo(0));
    ada.asks()
        .get("/api/v1/eyewear/" + hidden)
        .then()
        .statusCode(200)
        .body("name", equalTo("Hers"));
  }

  private static Map<String, Object> machine(String name) {
    Map<String, Object> machine = new java.util.HashMap<>(FilledBench.laser());
    machine.put("name", name);
    return machine;
  }

  @Test
  void whatDoesNotFitOnTheBenchAnyMoreIsRefused() throws Exception {
    List<JsonObject> lines = new ArrayList<>();
    for (int i = 0; i < 302; i++) {
      JsonObject line = JsonParser.parseString(fixture().toString()).getAsJsonObject();
      line.addProperty("id", UUID.randomUUID().toString());
      lines.add(line);
    }
    Response done = restore(eve, Zips.with(copy, BenchKind.FIXTURE, lines), true);
    done.then()
        .statusCode(200)
        .body("counts.find { it.kind == 'fixture' }.fresh", equalTo(300))
        .body("counts.find { it.kind == 'fixture' }.refused", equalTo(2))
        .body("things[301].sentences[0]", containsString("as many fixtures as fit"));
  }
}

package club.emberwell.exchange;

import static club.emberwell.exchange.OpenFiles.csv;
import static club.emberwell.exchange.OpenFiles.data;
import static club.emberwell.exchange.OpenFiles.post;
import static club.emberwell.exchange.OpenFiles.row;
import static club.emberwell.exchange.OpenFiles.text;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.desk.Cast;
import club.emberwell.exchange.open.DataFile;
import club.emberwell.exchange.open.DataPackage;
import club.emberwell.exchange.open.PackageMaker;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipFile;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * All that the club shares, as files: what is in them, what is not, and that strangers can read it.
 */
@QuarkusTest
class OpenDataTest {
  @Inject PackageMaker maker;
  @Inject Cast cast;
  @Inject ObjectMapper json;

  @ConfigProperty(name = "emberwell.public-url")
  String publicUrl;

  @TempDir Path folder;

  private Path unpacked() throws IOException {
    Path zip = folder.resolve("data.zip");
    Files.write(zip, data(maker.newest().orElseThrow().zip().name()).asByteArray());
    try (ZipFile files = new ZipFile(zip.toFile())) {
      for (var entry : files.stream().toList()) {
        try (InputStream in = files.getInputStream(entry)) {
          Files.copy(in, folder.resolve(entry.getName()));
        }
      }
    }
    return folder;
  }

  private String run(Path in, String... command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command).directory(in.toFile()).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "did not end: " + said);
    assertEquals(0, process.exitValue(), said);
    return said;
  }

  @Test
  void aStrangerOpensThePackageWithTheLinesOfThePage() throws Exception {
    Person author = People.join();
    post(author, Map.of("notes", "=HYPERLINK(\"http://a.example\")\n\"quoted\", and more"));
    post(
        author,
        Map.of("settings", Map.of("power", "9 W", "speed", "12 in/s", "focusOffset", "-2 mm")));
    maker.make();
    Path here = unpacked();

    Document page = Jsoup.parse(given().get("/data").then().statusCode(200).extract().asString());
    Files.writeString(
        here.resolve("check.sh"), "set -e\n" + page.selectFirst("#lines-check").wholeText());
    assertTrue(run(here, "bash", "check.sh").contains("Signature Verified Successfully"));

    String table = here.resolve("trials.csv").toString();
    String address = publicUrl.replaceFirst("/+$", "") + "/data/trials.csv";
    Files.writeString(
        here.resolve("lines.R"), page.selectFirst("#lines-r").wholeText().replace(address, table));
    assertTrue(run(here, "Rscript", "--vanilla", "lines.R").contains("birch-plywood"));
    Files.writeString(
        here.resolve("lines.py"),
        page.selectFirst("#lines-python").wholeText().replace(address, table));
    assertTrue(run(here, "/usr/bin/python3", "lines.py").contains("birch-plywood"));

    try (InputStream check = getClass().getResourceAsStream("/open-data/check.py")) {
      Files.copy(check, here.resolve("check.py"));
    }
    assertTrue(run(here, "/usr/bin/python3", "check.py").contains("trials"));
  }

  @Test
  void everyFileIsAsItIsDescribed() throws Exception {
    Person author = People.join();
    post(author, Map.of());
    DataPackage made = maker.make().orElseThrow();
    JsonNode told =
        json.readTree(given().get("/api/v1/data").then().statusCode(200).extract().asString());
    assertEquals(made.counts().trials(), told.get("trials").asInt());
    List<DataFile> all = new ArrayList<>(made.files());
    all.add(made.zip());
    for (DataFile file : all) {
      Response sent = data(file.name());
      byte[] bytes = sent.then().statusCode(200).extract().asByteArray();
      assertEquals(file.bytes(), bytes.length, file.name());
      assertEquals(Long.toString(file.bytes()), sent.header("Content-Length"));
      byte[] sum = MessageDigest.getInstance("SHA-256").digest(bytes);
      assertEquals(file.sha256(), HexFormat.of().formatHex(sum), file.name());
      assertEquals("\"" + file.sha256() + "\"", sent.header("ETag"));
    }
    assertEquals(made.counts().trials() + 1, csv(text("trials.csv")).size());
  }

  @Test
  void theDescriptionIsValidByTheSchemasOfTheStandard() throws Exception {
    maker.make();
    JsonNode described = json.readTree(text("datapackage.json"));
    assertEquals(List.of(), faults("data-package", described));
    JsonNode table = described.get("resources").get(0);
    assertEquals("trials.csv", table.get("path").asText());
    assertEquals(List.of(), faults("tabular-data-resource", table));
    for (JsonNode resource : described.get("resources")) {
      DataFile file =
          maker.newest().orElseThrow().file(resource.get("path").asText()).orElseThrow();
      assertEquals("sha256:" + file.sha256(), resource.get("hash").asText());
      assertEquals(file.bytes(), resource.get("bytes").asLong());
    }
  }

  private List<String> faults(String schema, JsonNode document) throws IOException {
    try (InputStream in = getClass().getResourceAsStream("/open-data/" + schema + ".json")) {
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V4)
          .getSchema(in)
          .validate(document)
          .stream()
          .map(Object::toString)
          .toList();
    }
  }

  @Test
  void aRowHoldsWhatWasTypedBesideItsValueAndNoFormula() {
    Person author = People.join();
    String id =
        post(
            author,
            Map.of(
                "notes",
                "=1+1",
                "settings",
                Map.of("power", "9 W", "speed", "12 in/s", "focusOffset", "-2 mm", "passes", 3)));
    maker.make();
    Map<String, String> row = row(text("trials.csv"), id);
    assertEquals("304.8", row.get("speed"));
    assertEquals("12 in/s", row.get("speedWritten"));
    assertEquals("9", row.get("power"));
    assertEquals("", row.get("powerPercent"));
    assertEquals("-2", row.get("focusOffset"));
    assertEquals("'-2 mm", row.get("focusOffsetWritten"));
    assertEquals("3", row.get("passes"));
    assertEquals("'=1+1", row.get("notes"));
    assertEquals("birch-plywood", row.get("material"));
    assertEquals("birch plywood", row.get("materialWritten"));
    assertEquals(author.handle(), row.get("author"));
  }

  @Test
  void oneNodeMakesItAtATimeAndOneThatDiedHoldsNobodyUp() {
    DataPackage before = maker.make().orElseThrow();
    cast.run(
        "update data_making set maker = gen_random_uuid(), until = now() + interval '5 minutes'");
    assertTrue(maker.make().isEmpty(), "another node is at it");
    assertEquals(before, maker.newest().orElseThrow());
    cast.run("update data_making set until = now() - interval '1 second'");
    maker.ask();
    maker.makeIfDue();
    assertNotEquals(before.id(), maker.newest().orElseThrow().id());
    assertEquals(1, cast.count("select count(*) from data_package"));
  }

  @Test
  void aFileIsSentInPartAndOnlyWhereItChanged() {
    maker.make();
    DataFile file = maker.newest().orElseThrow().zip();
    byte[] whole = data(file.name()).asByteArray();
    String tag = "\"" + file.sha256() + "\"";
    given().header("If-None-Match", tag).get("/data/" + file.name()).then().statusCode(304);
    Response part = given().header("Range", "bytes=2-5").get("/data/" + file.name());
    part.then().statusCode(206).header("Content-Range", "bytes 2-5/" + whole.length);
    assertArrayEquals(Arrays.copyOfRange(whole, 2, 6), part.asByteArray());
    given()
        .header("Range", "bytes=-3")
        .get("/data/" + file.name())
        .then()
        .statusCode(206)
        .header("Content-Length", "3");
    given()
        .header("Range", "bytes=2-5")
        .header("If-Range", "\"another\"")
        .get("/data/" + file.name())
        .then()
        .statusCode(200);
    given().header("Range", "bytes=999999999-").get("/data/" + file.name()).then().statusCode(416);
    given()
        .head("/data/" + file.name())
        .then()
        .statusCode(200)
        .header("Content-Length", Integer.toString(whole.length));
    given().get("/data/other.csv").then().statusCode(404);
    given().get("/data/..%2Fdata-signing-key.pem").then().statusCode(404);
  }

  @Test
  void aSearchIsAFileWithTheSameColumns() throws Exception {
    Person author = People.join();
    String word = "w" + UUID.randomUUID().toString().substring(0, 8);
    String id = post(author, Map.of("notes", "+" + word));
    maker.make();
    String address = "/search.csv?q=" + word;
    Response sent = given().get(address);
    sent.then().statusCode(200).contentType(containsString("text/csv"));
    String table = sent.asString();
    assertEquals(csv(text("trials.csv")).get(0), csv(table).get(0));
    assertEquals(2, csv(table).size());
    assertEquals("'+" + word, row(table, id).get("notes"));
    given()
        .get("/search.json?q=" + word)
        .then()
        .statusCode(200)
        .body("total", equalTo(1))
        .body("items[0].report", equalTo(id))
        .body("items[0].speed", equalTo(400f));
    given().get("/search.csv?speedMin=fast").then().statusCode(422);
    String page = given().get("/?q=" + word).asString();
    assertTrue(page.contains("/search.csv?q=" + word), page);
  }
}

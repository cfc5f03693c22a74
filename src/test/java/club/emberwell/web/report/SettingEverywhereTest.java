package club.emberwell.web.report;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Basis;
import club.emberwell.search.SearchService;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Property;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Whatever a report can say of a setting or of the work must reach every place that shows it. */
@QuarkusTest
class SettingEverywhereTest {
  private static final String REPORTS = "/api/v1/reports";
  private static final String FORM = "form.post-form";

  @Inject SearchService search;

  private Person ada;
  private String machine;

  @BeforeEach
  void join() {
    ada = People.join();
    machine = machine(ada);
  }

  private static String machine(Person person) {
    return keyed(
            person,
            Map.of(
                "name", "Marking fibre",
                "source", "fibre",
                "wavelength", "1064 nm",
                "ratedPower", "20 W",
                "motion", "galvo"))
        .post("/api/v1/machines")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static io.restassured.specification.RequestSpecification keyed(Person who, Object body) {
    return who.asks().header("Idempotency-Key", UUID.randomUUID().toString()).body(body);
  }

  /** What is sent for a setting: something that no rule finds odd on a pulsed marking laser. */
  private static Object sample(Setting setting) {
    return switch (setting.value().shape()) {
      case QUANTITY -> typed(setting);
      case COUNT -> 2;
      case FLAG -> true;
      case CHOICE -> setting.value().choices().get(0).code();
    };
  }

  private static String typed(Setting setting) {
    return switch (setting) {
      case POWER -> "50 %";
      case SPEED -> "400 mm/s";
      case LINE_SPACING -> "0.1 mm";
      default -> "20 " + kind(setting).kind().canonicalUnit();
    };
  }

  private static Basis kind(Setting setting) {
    return setting.value().bases().get(0);
  }

  private static Map<String, Object> settings(Setting setting) {
    Map<String, Object> settings = new HashMap<>();
    for (Setting needed : List.of(Setting.POWER, Setting.SPEED, Setting.LINE_SPACING, setting)) {
      settings.put(needed.code(), sample(needed));
    }
    return settings;
  }

  private Map<String, Object> report(Map<String, Object> settings) {
    Map<String, Object> report = new HashMap<>();
    report.put("machine", machine);
    report.put("material", "birch plywood");
    report.put("process", "surface engraving");
    report.put("settings", settings);
    report.put("effect", "right");
    return report;
  }

  private String post(Map<String, Object> report) {
    return keyed(ada, report).post(REPORTS).then().statusCode(201).extract().path("id");
  }

  private static JsonPath read(String id) {
    return given().get(REPORTS + "/" + id).then().statusCode(200).extract().jsonPath();
  }

  private static void says(Setting setting, JsonPath report) {
    String at = "settings." + setting.code();
    Object said = report.get(at);
    switch (setting.value().shape()) {
      case QUANTITY -> {
        assertEquals(typed(setting), report.get(at + ".written"), setting + " as written");
        assertEquals(kind(setting).kind().canonicalUnit(), report.get(at + ".unit"));
      }
      default -> assertEquals(sample(setting), said, setting.code());
    }
  }

  @ParameterizedTest
  @EnumSource(Setting.class)
  void aSettingIsReadShownKeptThroughAnEditAndDiffered(Setting setting) {
    Map<String, Object> settings = settings(setting);
    String id = post(report(settings));
    says(setting, read(id));

    Browser browser = Browser.of(ada).get("/reports/" + id + "/edit").tidy();
    browser.send(FORM, Map.of("notes", "Wiped with a damp cloth."));
    assertEquals(303, browser.status(), "the form asks nothing anew");
    says(setting, read(id));

    String shown = browser.get("/reports/" + id).tidy().page().text();
    assertTrue(shown.contains(setting.label()), "its row on the page of the report");

    settings.remove(setting.code());
    if (setting.form().isNeeded()) {
      settings.put(setting.code(), setting == Setting.POWER ? "60 %" : "300 mm/s");
    }
    ada.asks()
        .header("If-Match", "\"2\"")
        .body(report(settings))
        .put(REPORTS + "/" + id)
        .then()
        .statusCode(200);
    given()
        .get(REPORTS + "/" + id + "/history")
        .then()
        .statusCode(200)
        .body("revisions[0].changes.field", hasItem("/settings/" + setting.code()));
  }

  @ParameterizedTest
  @EnumSource(Setting.class)
  void aSettingIsPostedByPage(Setting setting) {
    Browser browser = Browser.of(ada).get("/post").tidy();
    Map<String, String> fields = new HashMap<>();
    settings(setting).forEach((code, value) -> fields.put("settings." + code, value.toString()));
    fields.put("material", "birch plywood");
    fields.put("process", "surface-engraving");
    fields.put("effect", "right");
    for (String field : fields.keySet()) {
      assertNotNull(browser.page().selectFirst("[name=\"" + field + "\"]"), field + " is asked");
    }
    browser.send(FORM, fields);
    assertEquals(303, browser.status());
    says(setting, read(browser.location().replaceAll("^/reports/|\\?.*$", "")));
  }

  @ParameterizedTest
  @EnumSource(Setting.class)
  void aSettingIsTakenOverByARepeat(Setting setting) {
    String id = post(report(settings(setting)));
    Person bert = People.join();
    Map<String, Object> repeat = Map.of("machine", machine(bert), "effect", "right");
    String other =
        keyed(bert, repeat)
            .post(REPORTS + "/" + id + "/repeats")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    says(setting, read(other));
  }

  @ParameterizedTest
  @EnumSource(Setting.class)
  void aSettingIsFoundByItsLimitsAndStandsInRanges(Setting setting) {
    post(report(settings(setting)));
    String mine = "?member=" + ada.handle();
    String code = kept(setting);
    if (setting.value().isSearchable()) {
      String unit = " " + kind(setting).kind().canonicalUnit();
      double number = Double.parseDouble(typed(setting).replaceAll(" .*", ""));
      String least = "&" + code + "Min={least}";
      String found = REPORTS + mine + least;
      given().get(found, number * 0.9 + unit).then().statusCode(200).body("total", equalTo(1));
      given().get(found, number * 1.1 + unit).then().statusCode(200).body("total", equalTo(0));
    }
    if (setting.value().isNumber()) {
      given()
          .get("/api/v1/consensus" + mine)
          .then()
          .statusCode(200)
          .body("groups[0].settings", hasKey(code));
    } else {
      SearchQuery query =
          SearchQuery.everything().withFacet(Facet.MEMBER.code(), List.of(ada.handle()));
      TrialColumns columns = search.columns(query);
      assertEquals(0, columns.property(Property.of(setting))[0], "its first choice");
    }
  }

  /** The word under which its canonical number is known. */
  private static String kept(Setting setting) {
    return setting.value().isNumber()
            && !setting.value().bases().isEmpty()
            && kind(setting).code() != null
        ? kind(setting).code()
        : setting.code();
  }

  @Test
  void everySettingStandsInAMembersDownloadAndInTheDescriptionOfTheApi() throws IOException {
    Map<String, Object> all = new HashMap<>();
    for (Setting setting : Setting.values()) {
      all.put(setting.code(), sample(setting));
    }
    post(report(all));
    String download = downloaded();
    JsonPath described = given().get("/q/openapi?format=json").jsonPath();
    for (Setting setting : Setting.values()) {
      assertTrue(download.contains("\"" + kept(setting) + "\""), kept(setting) + " as read");
      for (String schema : List.of("WrittenSettings", "SettingsJson")) {
        Map<String, Object> properties =
            described.getMap("components.schemas." + schema + ".properties");
        assertTrue(properties.containsKey(setting.code()), schema + " has " + setting.code());
      }
    }
  }

  private String downloaded() throws IOException {
    byte[] zip = ada.asks().get("/api/v1/me/data").then().statusCode(200).extract().asByteArray();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        if (entry.getName().equals("reports.json")) {
          return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
      }
    }
    throw new AssertionError("no reports in the download");
  }

  @ParameterizedTest
  @CsvSource({
    "material, slate, slate",
    "coating, powder coat, powder-coat",
    "colour, navy, navy",
    "thickness, 3 mm, 3"
  })
  void aPropertyOfTheWorkIsReadShownFoundKeptThroughAnEditAndDiffered(
      String property, String typed, String filed) {
    Map<String, Object> report = report(settings(Setting.SPEED));
    report.put(property, typed);
    String id = post(report);
    assertEquals(typed, read(id).get(property + ".written"));

    Browser browser = Browser.of(ada).get("/reports/" + id + "/edit").tidy();
    browser.send(FORM, Map.of("notes", "Wiped with a damp cloth."));
    assertEquals(303, browser.status());
    assertEquals(typed, read(id).get(property + ".written"));

    Document shown = browser.get("/reports/" + id).tidy().page();
    Element heading = shown.selectFirst("h1");
    assertTrue(heading.text().toLowerCase().contains(typed), "the work is named in the heading");

    String limit = property.equals("thickness") ? "&thicknessMin=2.9 mm" : "&" + property + "=";
    String found = REPORTS + "?member=" + ada.handle() + limit;
    given()
        .get(property.equals("thickness") ? found : found + filed)
        .then()
        .statusCode(200)
        .body("total", equalTo(1))
        .body("hits[0]." + property, notNullValue());

    Person bert = People.join();
    String repeated =
        keyed(bert, Map.of("machine", machine(bert), "effect", "right"))
            .post(REPORTS + "/" + id + "/repeats")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    assertEquals(typed, read(repeated).get(property + ".written"));

    report.put(property, property.equals("thickness") ? "4 mm" : "something else");
    ada.asks()
        .header("If-Match", "\"2\"")
        .body(report)
        .put(REPORTS + "/" + id)
        .then()
        .statusCode(200);
    given()
        .get(REPORTS + "/" + id + "/history")
        .then()
        .statusCode(200)
        .body("revisions[0].changes.field", hasItem("/" + property));
  }
}

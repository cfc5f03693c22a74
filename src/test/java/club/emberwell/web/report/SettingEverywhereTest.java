package club.emberwell.web.report;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasKey;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Basis;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.SearchService;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Property;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jsoup.nodes.Element;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whatever a report can say of a setting must reach every place that shows it. */
@QuarkusTest
class SettingEverywhereTest extends EverywhereCase {
  private static final Path STYLES =
      Path.of("src/main/resources/META-INF/resources/assets/posting.css");

  @Inject SearchService search;

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

  /** Its name in answers, where a power given in percent has another than one in watts. */
  private static String answered(Setting setting) {
    boolean ways = setting.value().bases().size() > 1;
    return ways ? kind(setting).kind().code() : setting.code();
  }

  private static void says(Setting setting, JsonPath report) {
    String at = "settings." + answered(setting);
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

    List<String> rows =
        browser
            .get("/reports/" + id)
            .tidy()
            .page()
            .select("[aria-label='Settings, table'] th")
            .eachText();
    assertTrue(rows.contains(setting.label()), "its row on the page of the report");

    settings.remove(setting.code());
    if (setting.form().isNeeded()) {
      settings.put(setting.code(), setting == Setting.POWER ? "60 %" : "300 mm/s");
    }
    changes(id, report(settings), "/settings/" + setting.code());
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

  /** A recipe of the report by its form, the report of that recipe, and a revision without it. */
  @ParameterizedTest
  @EnumSource(Setting.class)
  void aSettingIsKeptInARecipeAndPostedFromIt(Setting setting) throws IOException {
    Map<String, Object> settings = settings(setting);
    Browser browser = Browser.of(ada).get("/recipes/new?report=" + post(report(settings))).tidy();
    browser.send(FORM, Map.of());
    assertEquals(303, browser.status(), "the form asks nothing anew");
    String id = browser.location().replaceAll("^/recipes/|\\?.*$", "");
    String path = "/api/v1/recipes/" + id;
    says(setting, ada.asks().get(path).then().statusCode(200).extract().jsonPath());
    browser.get("/recipes/" + id).tidy();
    List<String> rows = browser.page().select("[aria-label='Settings, table'] th").eachText();
    assertTrue(rows.contains(setting.label()), "its row on the page of the recipe");
    browser.get("/recipes/" + id + "/edit").send(FORM, Map.of("reason", "Only looked."));
    assertEquals(303, browser.status(), "the form asks nothing anew");
    says(setting, ada.asks().get(path).jsonPath());
    String made = keyed(ada, Map.of("effect", "right")).post(path + "/reports").path("id");
    says(setting, read(made));
    assertNotNull(
        downloaded("recipes.json").get("[0].written.settings." + setting.code()), "as written");

    settings.remove(setting.code());
    if (setting.form().isNeeded()) {
      settings.put(setting.code(), setting == Setting.POWER ? "60 %" : "300 mm/s");
    }
    Map<String, Object> changed = report(settings);
    changed.remove("effect");
    changed.put("reason", "Without it.");
    ada.asks().header("If-Match", "\"2\"").body(changed).put(path).then().statusCode(200);
    List<String> fields =
        ada.asks().get(path + "/revisions").jsonPath().getList("items[0].changes.pointer");
    assertTrue(fields.contains("/settings/" + setting.code()), fields::toString);
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
      double number = number(setting);
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

  @ParameterizedTest
  @EnumSource(Setting.class)
  void aSettingStandsInAMembersDownloadAndInTheDescriptionOfTheApi(Setting setting)
      throws IOException {
    post(report(settings(setting)));
    JsonPath download = downloaded("reports.json");
    assertNotNull(download.get("[0].trials[0].settings." + kept(setting)), "as read");
    assertNotNull(download.get("[0].written.trials[0].settings." + setting.code()), "as written");
    JsonPath described = given().get("/api/v1/openapi.json").jsonPath();
    String schemas = "components.schemas.";
    assertNotNull(described.get(schemas + "WrittenSettings.properties." + setting.code()));
    assertNotNull(described.get(schemas + "Settings.properties." + answered(setting)));
  }

  @ParameterizedTest
  @EnumSource(Setting.class)
  void aSettingIsToldInTheLineOfAFoundTrial(Setting setting) {
    post(report(settings(setting)));
    String line =
        Browser.of(ada)
            .get("/?member=" + ada.handle())
            .page()
            .selectFirst(".settings-line")
            .ownText();
    String words = inLine(setting);
    if (words != null) {
      assertEquals(setting.form().inLine(), line.contains(words), line);
    }
  }

  /** Null where it is not worth a mention. */
  private static String inLine(Setting setting) {
    return switch (setting.value().shape()) {
      case QUANTITY ->
          QuantityPrinter.print(number(setting), kind(setting).kind(), UnitPreferences.metric());
      case COUNT -> "2 " + setting.label().toLowerCase(Locale.ROOT);
      case FLAG, CHOICE -> setting.value().choices().get(0).inLine();
    };
  }

  private static double number(Setting setting) {
    return Double.parseDouble(typed(setting).replaceAll(" .*", ""));
  }

  private static String hides(Process process) {
    return "[value=\"%1$s\"]:checked) .never-at-%1$s".formatted(process.code());
  }

  /** Which setting says something of which work stands in the catalogue, and nowhere else. */
  @ParameterizedTest
  @EnumSource(Process.class)
  void whatSaysNothingOfSuchWorkIsNeitherAskedNorKeptByThePageAndIsToldByTheApi(Process process)
      throws IOException {
    Map<String, Object> settings = new HashMap<>();
    Map<String, String> fields = new HashMap<>();
    for (Setting setting : Setting.values()) {
      settings.put(setting.code(), sample(setting));
      fields.put("settings." + setting.code(), sample(setting).toString());
    }
    Map<String, Object> report = report(settings);
    report.put("process", process.code());
    List<String> told = read(post(report)).getList("remarks.pointer");
    String styles = Files.readString(STYLES);
    Browser browser = Browser.of(ada).get("/post?fresh=yes").tidy();
    for (Setting setting : Setting.values()) {
      Element asked =
          browser.page().selectFirst(".asked:has([name='settings." + setting.code() + "'])");
      boolean applies = setting.appliesTo(process);
      assertEquals(
          !applies, asked.hasClass("never-at-" + process.code()), setting + " on the form");
      assertEquals(!applies, told.contains("/settings/" + setting.code()), setting + " by the API");
      assertTrue(applies || styles.contains(hides(process)), "the stylesheet hides at " + process);
    }
    fields.put("material", "birch plywood");
    fields.put("thickness", "3 mm");
    fields.put("resultColour", "gold");
    fields.put("process", process.code());
    fields.put("effect", "right");
    browser.send(FORM, fields);
    if (browser.status() == 422) {
      browser.send(FORM, Map.of());
    }
    String id = browser.location().replaceAll("^/reports/|\\?.*$", "");
    holds(process, read(id));
    browser.get("/reports/" + id + "/edit").send(FORM, Map.of("settings.lineSpacing", "0.1 mm"));
    assertEquals(303, browser.status());
    holds(process, read(id));
  }

  private static void holds(Process process, JsonPath report) {
    for (Setting setting : Setting.values()) {
      Object kept = report.get("settings." + answered(setting));
      assertEquals(setting.appliesTo(process), kept != null, setting + " at " + process);
    }
  }
}

package club.emberwell.web.report;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.laser.Process;
import club.emberwell.remark.Coded;
import club.emberwell.report.reading.WorkForm.Missed;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.search.SearchService;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whatever a report can say of its work must reach every place that shows it. */
@QuarkusTest
class WorkEverywhereTest extends EverywhereCase {
  private static final double NUMBER = 3;

  @Inject SearchService search;

  /** What is sent for a property: a word of its vocabulary, a number, or a word of nobody's. */
  private static String typed(WorkProperty property) {
    return switch (property.value().shape()) {
      case WORD ->
          switch (property.value().vocabulary()) {
            case MATERIAL -> "slate";
            case COATING -> "powder coat";
            case COLOUR -> "navy";
            case DEFECT -> "charring";
          };
      case QUANTITY -> "3 " + property.value().kind().canonicalUnit();
      case TEXT, LINES -> "Quagga " + property.code();
    };
  }

  private Map<String, Object> saying(WorkProperty property) {
    Map<String, Object> report =
        report(Map.of("power", "50 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"));
    report.put(property.code(), typed(property));
    return report;
  }

  private static void says(WorkProperty property, JsonPath report) {
    boolean free = property.value().shape().isFree();
    assertEquals(
        typed(property), report.get(property.code() + (free ? "" : ".written")), property.code());
  }

  @ParameterizedTest
  @EnumSource(WorkProperty.class)
  void aPropertyIsReadShownKeptThroughAnEditAndDiffered(WorkProperty property) {
    Map<String, Object> report = saying(property);
    String id = post(report);
    says(property, read(id));

    String other = property == WorkProperty.NOTES ? "lot" : "notes";
    Browser browser = Browser.of(ada).get("/reports/" + id + "/edit").tidy();
    browser.send(FORM, Map.of(other, "Wiped with a damp cloth."));
    assertEquals(303, browser.status(), "the form asks nothing anew");
    says(property, read(id));

    Document shown = browser.get("/reports/" + id).tidy().page();
    Element where = property.value().shape().isFree() ? shown : shown.selectFirst("h1");
    String words = where.text().toLowerCase();
    assertTrue(words.contains(typed(property).toLowerCase()), "told on the page of the report");

    report.put(property.code(), property.value().kind() == null ? "another" : "4 mm");
    changes(id, report, "/" + property.code());
  }

  @ParameterizedTest
  @EnumSource(WorkProperty.class)
  void aPropertyIsPostedByPageAndOfferedAgainWhereItLikelyHolds(WorkProperty property) {
    Browser browser = Browser.of(ada).get("/post").tidy();
    Map<String, String> fields = new HashMap<>();
    fields.put("settings.power", "50 %");
    fields.put("settings.speed", "400 mm/s");
    fields.put("settings.lineSpacing", "0.1 mm");
    fields.put("material", "birch plywood");
    fields.put("process", "surface-engraving");
    fields.put("effect", "right");
    fields.put(property.code(), typed(property));
    Element field = browser.page().selectFirst("[name=\"" + property.code() + "\"]");
    assertNotNull(field, "is asked");
    assertEquals(
        property.question(), browser.page().selectFirst("label[for=" + field.id() + "]").ownText());
    browser.send(FORM, fields);
    assertEquals(303, browser.status());
    says(property, read(browser.location().replaceAll("^/reports/|\\?.*$", "")));

    Element again = browser.get("/post").page().selectFirst("[name=\"" + property.code() + "\"]");
    Element unit = again.parent().selectFirst(".units [checked]");
    String number = again.is("textarea") ? again.text() : again.val();
    String offered = unit == null || number.isEmpty() ? number : number + " " + unit.val();
    assertEquals(property.form().isOnce() ? "" : typed(property), offered);
  }

  @ParameterizedTest
  @EnumSource(WorkProperty.class)
  void aRepeatTakesOverWhatDescribesThePieceAndNothingSaidFreely(WorkProperty property) {
    String id = post(saying(property));
    Person bert = People.join();
    String repeated =
        keyed(bert, Map.of("machine", machine(bert), "effect", "right"))
            .post(REPORTS + "/" + id + "/repeats")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    if (property.value().shape().isFree()) {
      assertNull(read(repeated).get(property.code()));
    } else {
      says(property, read(repeated));
    }
  }

  @ParameterizedTest
  @EnumSource(WorkProperty.class)
  void aPropertyIsFoundAndStandsInTheColumns(WorkProperty property) {
    String id = post(saying(property));
    String mine = REPORTS + "?member=" + ada.handle();
    SearchQuery query =
        SearchQuery.everything().withFacet(Facet.MEMBER.code(), List.of(ada.handle()));
    TrialColumns columns = search.columns(query);
    Optional<Facet> facet = Coded.of(Facet.class, property.code());
    if (property.value().shape() == Shape.WORD) {
      assertTrue(facet.isPresent(), "can be narrowed by");
    }
    if (facet.isPresent()) {
      String code = property.value().shape().isFree() ? typed(property) : dashed(property);
      found(mine + "&" + property.code() + "={code}", code, 1);
      found(mine + "&" + property.code() + "={code}", Facet.NOT_GIVEN, 0);
      Property column = Property.of(property.code());
      assertEquals(
          code, columns.labels().value(column, columns.property(column)[0]), "as a column");
    }
    if (property.value().shape() == Shape.QUANTITY) {
      String unit = " " + property.value().kind().canonicalUnit();
      found(mine + "&" + property.code() + "Min={least}", NUMBER * 0.9 + unit, 1);
      found(mine + "&" + property.code() + "Min={least}", NUMBER * 1.1 + unit, 0);
      Measure measure =
          Measure.all().stream().filter(m -> m.code().equals(property.code())).findAny().get();
      assertEquals(NUMBER, columns.values(measure)[0], "as a column");
    } else {
      found(mine + "&q={words}", typed(property), 1);
    }
    given()
        .get(mine)
        .then()
        .body("hits[0].id", equalTo(id))
        .body("hits[0]." + property.code(), notNullValue());
  }

  private static String dashed(WorkProperty property) {
    return typed(property).replace(' ', '-');
  }

  private static void found(String search, String value, int total) {
    given().get(search, value).then().statusCode(200).body("total", equalTo(total));
  }

  @ParameterizedTest
  @EnumSource(WorkProperty.class)
  void aPropertyIsMissedAtTheProcessThatNeedsItAndNowhereElse(WorkProperty property) {
    Missed missed = property.form().missed();
    for (Process process : Process.values()) {
      Map<String, Object> report = saying(WorkProperty.MATERIAL);
      report.put("process", process.code());
      List<String> warned = read(post(report)).getList("warnings.pointer");
      boolean told = warned.contains("/" + property.code());
      assertEquals(missed != null && missed.at() == process, told, process.code());
    }
  }

  @ParameterizedTest
  @EnumSource(WorkProperty.class)
  void aPropertyStandsInAMembersDownloadAndInTheDescriptionOfTheApi(WorkProperty property)
      throws IOException {
    post(saying(property));
    JsonPath download = downloaded("reports.json");
    assertNotNull(download.get("[0].written." + property.code()), "as written");
    assertNotNull(download.get("[0].revisions[0].interpreted." + property.code()), "as read");
    JsonPath described = given().get("/api/v1/openapi.json").jsonPath();
    for (String schema : List.of("ReportRequest", "ReportHit")) {
      Map<String, Object> all = described.getMap("components.schemas." + schema + ".properties");
      assertTrue(all.containsKey(property.code()), schema);
      assertFalse(all.containsKey("values"), "nothing but the properties");
    }
  }
}

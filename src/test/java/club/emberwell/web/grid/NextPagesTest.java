package club.emberwell.web.grid;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What to burn next after a row of five speeds at one power, 10 W at a wavelength nobody else in
 * these tests has: doses 5, 2.5, 1.25, 0.625 and 0.3125 J/mm2.
 */
@QuarkusTest
class NextPagesTest {
  private Person ada;

  @BeforeEach
  void join() {
    ada = People.join();
  }

  private static Map<String, Object> grid(String wavelength, String... effects) {
    Map<String, Object> body = new HashMap<>();
    body.put(
        "laser",
        Map.of(
            "source", "diode",
            "wavelength", wavelength,
            "ratedPower", "10 W",
            "motion", "gantry"));
    body.put("material", "slate");
    body.put("process", "surface-engraving");
    body.put("settings", Map.of("lineSpacing", "0.1 mm"));
    body.put(
        "axes",
        Map.of(
            "across",
            Map.of(
                "setting",
                "speed",
                "values",
                List.of("10 mm/s", "20 mm/s", "40 mm/s", "80 mm/s", "160 mm/s")),
            "down",
            Map.of("setting", "power", "values", List.of("50 %"))));
    if (effects.length > 0) {
      body.put("results", Map.of("effects", List.of(Arrays.asList(effects))));
    }
    return body;
  }

  private String judged(String... effects) {
    return ada.asks()
        .header("Idempotency-Key", "\"" + UUID.randomUUID() + "\"")
        .body(grid("700 nm", effects))
        .post("/api/v1/grids")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private ValidatableResponse next(String grid, Integer tests) {
    return ada.asks()
        .config(
            RestAssuredConfig.config()
                .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE)))
        .queryParam("tests", tests == null ? "8" : tests.toString())
        .get("/api/v1/grids/" + grid + "/next")
        .then();
  }

  @Test
  void theNextTestsLieWhereTheEndsMayBeAndCanBeSentAsAGrid() {
    String grid = judged("too-much", "right", "right", "too-little", "too-little");
    Map<String, Object> plan =
        next(grid, 6)
            .statusCode(200)
            .body("window.basis", equalTo("guess"))
            .body("window.judged", equalTo(5))
            .body("window.lower.dose.value", greaterThan(0.6))
            .body("window.lower.dose.value", lessThan(1.3))
            .body("window.upper.dose.value", greaterThan(2.4))
            .body("window.upper.dose.value", lessThan(5.1))
            .body("window.narrower", lessThan(0.9))
            .body("tests", hasSize(6))
            .body("tests[0].chance", lessThan(0.7))
            .body("sentences", hasItem(containsString("begins with a wide guess")))
            .extract()
            .path("next");
    ada.asks()
        .body(plan)
        .post("/api/v1/grids/plan")
        .then()
        .statusCode(200)
        .body("plan.tests", equalTo(6));
  }

  @Test
  void thePageOfTheGridSaysItAndOneTapPlansIt() {
    String grid = judged("too-much", "right", "right", "too-little", "too-little");
    Browser browser = Browser.of(ada).get("/grids/" + grid).tidy();
    String main = browser.page().select("main").text();
    assertTrue(main.contains("What to burn next"), main);
    assertTrue(main.contains("On this machine it is right from about"), main);
    assertTrue(main.contains("both ends should be known about"), main);
    String plan = browser.page().select("a:contains(Plan these tests)").attr("href");
    assertTrue(plan.startsWith("/grids/plan?"), plan);
    browser.get("/grids/" + grid + "/next?tests=4").tidy();
    assertEquals(4, browser.page().select("main tbody tr").size());
    assertTrue(browser.page().text().contains("How do we know?"));
  }

  @ParameterizedTest
  @CsvSource({"1", "21", "many"})
  void aNumberOfTestsThatIsNoGridIsToldAtItsField(String tests) {
    String grid = judged("right", null, null, null, null);
    Browser browser = Browser.of(ada).get("/grids/" + grid + "/next?tests=" + tests).tidy();
    Document page = browser.page();
    assertEquals("Ask for 2 to 20 tests.", page.select("#tests-error").text());
    assertEquals(tests, page.select("input[name=tests]").val());
    if (!tests.equals("many")) {
      next(grid, Integer.valueOf(tests))
          .statusCode(422)
          .body("errors.detail", hasItem("Ask for 2 to 20 tests."));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          right,right,right,right,right                          | All tests were right so far.
          too-little,too-little,too-little,too-little,too-little | The next ones go higher.
          too-much,too-much,too-much,too-much,too-much           | The next ones go lower.
          too-little,right,right,right,too-much                  | Some results do not fit each other
          -,right,-,-,-                                          | One test alone says little.
          """)
  void whatIsOddAboutResultsIsSaidAndStillThereAreNextTests(String effects, String said) {
    String[] row =
        Arrays.stream(effects.split(",")).map(e -> e.equals("-") ? null : e).toArray(String[]::new);
    next(judged(row), null)
        .statusCode(200)
        .body("sentences", hasItem(containsString(said)))
        .body("tests", hasSize(8))
        .body("window.narrower", lessThan(1.0));
  }

  @Test
  void withoutResultsThePageOfTheGridHasNoBoxAndTheAnswerSaysSo() {
    String grid = judged();
    assertFalse(Browser.of(ada).get("/grids/" + grid).page().text().contains("What to burn next"));
    next(grid, null)
        .statusCode(200)
        .body("sentences", hasItem(containsString("No test of this grid is judged yet")))
        .body("window.judged", equalTo(0));
  }

  @Test
  void nobodyElseIsTold() {
    String grid = judged("right", "right", null, null, null);
    People.join().asks().get("/api/v1/grids/" + grid + "/next").then().statusCode(404);
  }
}

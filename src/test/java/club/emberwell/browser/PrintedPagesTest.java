package club.emberwell.browser;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.card.Shop;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.report.photo.Pictures;
import com.microsoft.playwright.Page;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What comes out of a printer, on A4 and on US Letter. */
@QuarkusTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PrintedPagesTest {
  private static final List<String> FORMATS = List.of("A4", "Letter");

  /** What one presses or follows on a screen. */
  private static final List<String> CONTROLS =
      List.of(
          "Find settings",
          "Sign in",
          "Your account",
          "Skip to",
          "Let a helper",
          "Back to the recipe",
          "Show in these units",
          "Open the newest",
          "Print this page",
          "Add to my bench",
          "Propose a change",
          "http");

  @TestHTTPResource("/")
  URL base;

  @Inject CatalogService catalog;

  private Chromium chromium;

  @BeforeAll
  void start() {
    chromium = Chromium.start(base);
  }

  @AfterAll
  void close() {
    chromium.close();
  }

  private Visit signedIn(Person person) {
    return chromium.visit(Screen.DESK).signIn(person.handle(), People.PASSWORD);
  }

  private static void keep(String name, Printed printed) throws IOException {
    // for whoever wants to look at it
    Path folder = Files.createDirectories(Path.of("target/printed"));
    Files.write(folder.resolve(name + "-" + printed.format() + ".pdf"), printed.pdf());
  }

  private static List<String> cautions(Page page) {
    return page.locator(".job-care h3, .job-care p").allTextContents();
  }

  @Test
  void aCardIsOneSheetWithEverySettingAndCautionAndASquareThatIsRead() throws Exception {
    Shop shop = Shop.open("open");
    String secret = shop.link();
    try (Visit visit = chromium.visit(Screen.PHONE)) {
      Page page = visit.open("/cards/" + secret).page();
      List<String> cautions = cautions(page);
      assertTrue(cautions.size() >= 4, cautions.toString());
      for (String format : FORMATS) {
        Printed printed = Printed.of(page, format);
        keep("card", printed);
        printed
            .on(1)
            .isLegible()
            .says(cautions)
            .says(Shop.STEPS)
            .says(Shop.OWN_LINES)
            .says(
                List.of(
                    "Coasters for the fair",
                    "Revision 1",
                    "Power60 %",
                    "Speed20 mm/s",
                    "Focus offset",
                    "Birch plywood",
                    "Open class 4 beam",
                    "Green pair: covered.",
                    "ask a laser safety officer; local rules decide",
                    "Sort out pieces with knots."))
            .hasNone(CONTROLS)
            .hasNone(List.of("Not on this page"));
        String square = printed.square();
        assertTrue(square.endsWith("/cards/" + secret + "?revision=1"), square);
      }
      visit.noComplaints();
    }
    try (Visit visit = signedIn(shop.owner())) {
      Page page = visit.open("/recipes/" + shop.recipe() + "/card").page();
      for (String format : FORMATS) {
        String square = Printed.of(page, format).on(1).hasNone(CONTROLS).square();
        assertTrue(square.endsWith("/card?revision=1"), square);
      }
    }
  }

  /** The material and process that say most. */
  private record Loud(String material, Process process, int letters) {}

  private Loud loudest() {
    List<Loud> all = new ArrayList<>();
    for (Term term : catalog.vocabulary().terms(TermKind.MATERIAL)) {
      for (Process process : List.of(Process.CUT, Process.SURFACE_ENGRAVING)) {
        List<Caution> said =
            catalog
                .snapshot()
                .cautions()
                .forWork(term.slug(), null, process, null, LaserSource.CO2);
        if (said.stream().noneMatch(one -> one.rule().isBan())) {
          int letters =
              said.stream()
                  .mapToInt(one -> one.rule().hazard().length() + one.rule().advice().length())
                  .sum();
          all.add(new Loud(term.label(), process, letters));
        }
      }
    }
    return all.stream().max(Comparator.comparing(Loud::letters)).orElseThrow();
  }

  @Test
  void aCardOfTheMostThatFitsIsStillOneSheetAndSaysWhatItLeftOut() throws Exception {
    Loud loud = loudest();
    List<String> steps =
        IntStream.rangeClosed(1, 30)
            .mapToObj(
                i ->
                    ("Step number %d, ".formatted(i) + "word by word ".repeat(30))
                        .substring(0, 239))
            .toList();
    Map<String, Object> most = new HashMap<>();
    most.put("name", "N".repeat(80));
    most.put("material", loud.material());
    most.put("process", loud.process().code());
    most.put("steps", steps);
    most.put("notes", "Notes that say much. ".repeat(190));
    most.put(
        "settings",
        Map.of(
            "power", "60 %",
            "speed", "20 mm/s",
            "lineSpacing", "0.1 mm",
            "passes", 3,
            "focusOffset", "-1 mm",
            "airAssist", true));
    Shop shop = Shop.open("open", most);
    for (int i = 0; i < 5; i++) {
      shop.owner().makes("eyewear", Map.of("name", "P".repeat(79) + i, "marking", "OD 2 @ 500 nm"));
    }
    shop.owner()
        .asks()
        .header("If-Match", "\"1\"")
        .body(
            Map.of(
                "name", "R".repeat(80), "lines", Collections.nCopies(10, "own line ".repeat(13))))
        .put("/api/v1/rooms/" + shop.room())
        .then()
        .statusCode(200);
    given()
        .header("Authorization", "Bearer " + shop.owner().token())
        .contentType("application/octet-stream")
        .body(Pictures.of(900, 1200, "jpeg"))
        .put("/api/v1/fixtures/" + shop.fixture() + "/photo")
        .then()
        .statusCode(200);
    try (Visit visit = chromium.visit(Screen.DESK)) {
      Page page = visit.open("/cards/" + shop.link()).page();
      List<String> cautions = cautions(page);
      for (String format : FORMATS) {
        Printed printed = Printed.of(page, format);
        keep("most", printed);
        printed
            .on(1)
            .isLegible()
            .says(cautions)
            .says(List.of("Power60 %", "Line spacing0.1 mm", "Passes3", "own line own line"))
            .says(List.of(steps.get(0), "Not on this page: steps", "to 30, the notes"))
            .says(List.of("The square opens all of it."))
            .hasNone(List.of(steps.get(29), "Notes that say much."));
      }
      assertTrue(page.locator(".job-steps li").count() == 30, "the screen has all of them");
    }
  }

  @Test
  void aRecipeIsPrintedWithoutItsButtons() throws Exception {
    Shop shop = Shop.open("closed");
    try (Visit visit = signedIn(shop.owner())) {
      Page page = visit.open("/recipes/" + shop.recipe()).page();
      List<String> cautions = page.locator(".caution h3").allTextContents();
      for (String format : FORMATS) {
        Printed printed = Printed.of(page, format);
        keep("recipe", printed);
        printed
            .says(cautions.stream().map(String::strip).toList())
            .says(List.of("Power", "60 %", "20 mm/s", "Sort out pieces with knots."))
            .hasNone(List.of("I used it today", "Post the result", "Find settings", "Sign out"));
      }
    }
  }

  @Test
  void thePlanOfAGridAndLabelsArePrintedWithoutControls() throws Exception {
    Shop shop = Shop.open("closed");
    Map<String, Object> grid = new HashMap<>();
    grid.put("machine", shop.machine());
    grid.put("material", "slate");
    grid.put("process", "surface-engraving");
    grid.put("settings", Map.of("lineSpacing", "0.1 mm"));
    grid.put(
        "axes",
        Map.of(
            "across", Map.of("setting", "power", "values", List.of("40 %", "60 %")),
            "down", Map.of("setting", "speed", "values", List.of("20 mm/s", "30 mm/s"))));
    String planned = shop.owner().makes("grids", grid);
    String sample = shop.owner().makes("samples", Map.of("what", "Slate coaster"));
    String code = shop.owner().asks().get("/api/v1/samples/" + sample).path("tag.code");
    try (Visit visit = signedIn(shop.owner())) {
      Page page = visit.open("/grids/" + planned).page();
      for (String format : FORMATS) {
        Printed printed = Printed.of(page, format);
        keep("grid", printed);
        printed
            .says(List.of("40 %", "60 %", "20", "30", "Speed down, power across", "In all tests"))
            .hasNone(List.of("Find settings", "Sign out", "Edit"));
      }
      page = visit.open("/samples/labels").page();
      for (String format : FORMATS) {
        Printed printed = Printed.of(page, format);
        keep("labels", printed);
        printed
            .on(1)
            .says(List.of(code, "Slate coaster"))
            .hasNone(List.of("Find settings", "Sign out", "Print this page"));
      }
    }
  }
}

package club.emberwell.web.answer;

import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * Seven members with a 10 W diode on teak at 50 % and 0.1 mm: doses 0.5 to 3.5 J/mm2, the middle 2.
 */
@QuarkusTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class AnswerPanelTest {
  private static final String LOT = "lot-" + Long.toString(System.nanoTime(), 36);
  private boolean posted;

  @BeforeEach
  void membersPost() {
    if (posted) {
      return;
    }
    posted = true;
    for (double dose = 0.5; dose <= 3.5; dose += 0.5) {
      post(People.join(), null, 50 / dose, "right");
    }
  }

  private static String post(Person person, String machine, double speed, String effect) {
    Map<String, Object> report = new HashMap<>();
    if (machine == null) {
      report.put(
          "laser",
          Map.of(
              "source", "diode",
              "wavelength", "455 nm",
              "ratedPower", "10 W",
              "motion", "gantry",
              "beamDiameter", "100 um"));
    } else {
      report.put("machine", machine);
    }
    report.put("material", "teak");
    report.put("process", "surface-engraving");
    report.put(
        "settings", Map.of("power", "50 %", "speed", speed + " mm/s", "lineSpacing", "0.1 mm"));
    report.put("effect", effect);
    report.put("lot", LOT);
    return person
        .asks()
        .header("Idempotency-Key", "\"" + UUID.randomUUID() + "\"")
        .body(report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static String machine(Person person, String wavelength, String source, String beam) {
    Map<String, Object> machine = new HashMap<>();
    machine.put("name", "Mine " + wavelength);
    machine.put("source", source);
    machine.put("wavelength", wavelength);
    machine.put("ratedPower", "10 W");
    machine.put("motion", "gantry");
    machine.put("maxSpeed", "400 mm/s");
    if (beam != null) {
      machine.put("beamDiameter", beam);
    }
    return person
        .asks()
        .header("Idempotency-Key", "\"" + UUID.randomUUID() + "\"")
        .body(machine)
        .post("/api/v1/machines")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static io.restassured.response.ValidatableResponse consensus(
      Person person, String machine) {
    return person
        .asks()
        .queryParam("q", LOT)
        .queryParam("machine", machine)
        .get("/api/v1/consensus")
        .then()
        .statusCode(200);
  }

  @Test
  void theApiAnswersWithAStartAtTheMiddleAndWholeSettingsOfDifferentMembers() {
    Person reader = People.join();
    consensus(reader, machine(reader, "450 nm", "diode", "100 um"))
        .body("groups", hasSize(1))
        .body("groups[0].answer.start.settings.powerPercent.value", equalTo(50))
        .body("groups[0].answer.start.settings.speed.value", equalTo(25))
        .body("groups[0].answer.start.dose", equalTo(2))
        .body("groups[0].answer.start.basis", equalTo("middle"))
        .body("groups[0].answer.start.sure", equalTo(true))
        .body("groups[0].answer.wholes", hasSize(3))
        .body("groups[0].answer.wholes.member.handle.unique()", hasSize(3))
        .body("groups[0].answer.next", nullValue());
  }

  @Test
  void aMissingSpotIsNamedAsTheReasonForARoughStart() {
    Person reader = People.join();
    consensus(reader, machine(reader, "450 nm", "diode", null))
        .body("groups[0].answer.start.sure", equalTo(false))
        .body("groups[0].answer.start.reasons.code", hasItem("my-spot"));
  }

  @Test
  void anotherKindOfLaserGetsNoStartButSeesTheSettings() {
    Person reader = People.join();
    String machine = machine(reader, "10.6 um", "co2", "100 um");
    consensus(reader, machine)
        .body("groups[0].answer.start", nullValue())
        .body("groups[0].answer.refusal", hasSize(1))
        .body("groups[0].answer.wholes", hasSize(3));
    String answer = Browser.of(reader).get("/?q=" + LOT).tidy().page().select(".answer").text();
    assertTrue(answer.contains("No start for this machine"), answer);
    assertTrue(answer.contains("they do not carry over"), answer);
  }

  @Test
  void theMachineUsedLastThatFitsIsAnsweredForAndCanBeChanged() {
    Person reader = People.join();
    machine(reader, "10.6 um", "co2", "100 um");
    machine(reader, "450 nm", "diode", "100 um");
    String other = machine(reader, "460 nm", "diode", "100 um");
    Browser browser = Browser.of(reader);
    Document page = browser.get("/?q=" + LOT).tidy().page();
    assertTrue(page.select(".answer").text().contains("on your Mine 450 nm"), page.text());
    assertEquals(3, page.select(".answer select[name=near] option").size());
    page = browser.get("/?q=" + LOT + "&machine=" + other).tidy().page();
    assertTrue(page.select(".answer").text().contains("on your Mine 460 nm"));
    post(reader, other, 25, "right");
    page = browser.get("/?q=" + LOT).page();
    assertTrue(page.select(".answer").text().contains("on your Mine 460 nm"));
    assertTrue(page.select(".answer").text().contains("You had it right with 50 % · 25 mm/s"));
  }

  @Test
  void afterMyOwnFailureTheNextTryLiesBetweenWhatFailed() {
    Person reader = People.join();
    String machine = machine(reader, "450 nm", "diode", "100 um");
    String little = post(reader, machine, 50, "too-little");
    Browser browser = Browser.of(reader);
    String report = browser.get("/reports/" + little).tidy().page().select("main").text();
    // the middle of the others, 2 J/mm2, is more than the 1 J/mm2 that failed
    assertTrue(report.contains("Try next 50 % · 25 mm/s"), report);
    String much = post(reader, machine, 12.5, "too-much");
    consensus(reader, machine)
        .body("groups[0].answer.next.dose", equalTo(2))
        .body("groups[0].answer.next.tooLittle", equalTo(1))
        .body("groups[0].answer.next.tooMuch", equalTo(4));
    String answer = browser.get("/?q=" + LOT).tidy().page().select(".answer").text();
    assertTrue(answer.contains("Try next 50 % · 25 mm/s"), answer);
    assertTrue(answer.contains("1 was too little, 4 was too much"), answer);
    assertFalse(
        new Browser().get("/reports/" + much).page().select("main").text().contains("Try next"));
  }

  @Test
  void aStrangerIsNotAskedForAMachineWhereOneKindOfLaserDidIt() {
    Document page = new Browser().get("/?q=" + LOT).tidy().page();
    assertEquals(0, page.select(".answer-lasers").size());
    assertEquals(0, page.select(".answer select[name=near]").size());
    assertFalse(page.select(".answer").text().contains("Start at"));
  }
}

package club.emberwell.web.report;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever can be said of a machine and its laser must reach every place that shows it. */
@QuarkusTest
class MachineEverywhereTest extends EverywhereCase {
  private static final String MACHINES = "/api/v1/machines";

  /** What no report tells: it is the owner's affair. */
  private static final Set<String> OWNERS =
      Set.of(
          "name",
          "model",
          "pulseControl",
          "controllerVersion",
          "inputBeam",
          "housing",
          "divergence");

  /** A gated tube that says everything; nothing of it is odd. */
  private static final Map<String, Object> SAID =
      Map.ofEntries(
          Map.entry("name", "Window bench"),
          Map.entry("model", "Tussock 40"),
          Map.entry("source", "co2"),
          Map.entry("wavelength", "10.6 um"),
          Map.entry("ratedPower", "41 W"),
          Map.entry("motion", "gantry"),
          Map.entry("regime", "cw"),
          Map.entry("lens", "51 mm"),
          Map.entry("beamDiameter", "152 um"),
          Map.entry("inputBeam", "5.1 mm"),
          Map.entry("gated", true),
          Map.entry("pulseControl", "set-freely"),
          Map.entry("maxSpeed", "603 mm/s"),
          Map.entry("controllerVersion", "Quagga 7"),
          Map.entry("housing", "interlocked"),
          Map.entry("divergence", "2.1 mrad"));

  private String id;

  /** Everything an owner may write of a machine. */
  static List<String> properties() {
    return Stream.of(WrittenMachine.class, WrittenLaser.class, WrittenMachine.Built.class)
        .flatMap(type -> Stream.of(type.getRecordComponents()))
        .map(RecordComponent::getName)
        .filter(name -> !Set.of("laser", "built", "confirmed").contains(name))
        .toList();
  }

  @BeforeEach
  void add() {
    id = keyed(ada, SAID).post(MACHINES).then().statusCode(201).extract().path("id");
  }

  private JsonPath machine() {
    return ada.asks().get(MACHINES + "/" + id).then().statusCode(200).extract().jsonPath();
  }

  private static void says(String property, JsonPath all, String at) {
    boolean quantity = all.get(at + property) instanceof Map;
    assertEquals(SAID.get(property), all.get(at + property + (quantity ? ".written" : "")));
  }

  @ParameterizedTest
  @MethodSource("properties")
  void aPropertyIsReadAskedOnTheFormKeptThroughAnEditAndShown(String property) {
    assertNotNull(SAID.get(property), "the machine of this test says it");
    says(property, machine(), "");

    Browser browser = Browser.of(ada).get("/bench/machines/" + id);
    List<Element> asked = browser.page().select("[name=" + property + "]");
    assertEquals(false, asked.isEmpty(), "is asked");
    browser.send("form[action$=" + id + "]", Map.of());
    assertEquals(303, browser.status(), "the form asks nothing anew");
    says(property, machine(), "");
    assertEquals(2, machine().getInt("version"));

    String bench = browser.get("/bench").tidy().page().text().toLowerCase();
    assertTrue(bench.contains(shown(property)), shown(property) + " in " + bench);
  }

  private static String shown(String property) {
    return switch (property) {
      case "source", "motion" -> SAID.get(property).toString();
      case "wavelength" -> "co2";
      case "regime" -> "continuous";
      case "gated" -> "power is pulsed (pwm)";
      case "pulseControl" -> "you can set the pulse duration";
      case "beamDiameter" -> "152 µm";
      case "housing" -> "closed, and opening it stops the beam";
      default -> SAID.get(property).toString().toLowerCase();
    };
  }

  @ParameterizedTest
  @MethodSource("properties")
  void aReportTellsItsLaserAndADownloadEverything(String property) throws IOException {
    Map<String, Object> report =
        report(Map.of("power", "50 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"));
    report.put("machine", id);
    JsonPath read = read(post(report));
    if (!OWNERS.contains(property)) {
      assertNotNull(read.get("laser." + property), "of the report");
    }
    assertNotNull(downloaded("machines.json").get("[1].written." + property), "handed out");
    JsonPath described = given().get("/api/v1/openapi.json").jsonPath();
    assertNotNull(
        described.get("components.schemas.MachineRequest.properties." + property), "described");
  }
}

package club.emberwell.exchange.bench;

import static io.restassured.RestAssured.given;

import club.emberwell.access.People.Person;
import club.emberwell.report.photo.Pictures;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** A bench with one of everything: a new kind does not compile before it is here. */
final class FilledBench {
  /** Letters of several scripts, what HTML and CSV take for their own, and beyond 16 bits. */
  static final String ODD = "Größe <b>\"A&B\"</b> 試験 \uD83D\uDD25 'q', ; = 1";

  final Person owner;
  final Map<BenchKind, String> ids = new EnumMap<>(BenchKind.class);

  /** Of somebody else, seen by all. */
  final String report;

  private FilledBench(Person owner, String report) {
    this.owner = owner;
    this.report = report;
  }

  static FilledBench of(Person owner, Person other) throws IOException {
    Map<String, Object> posted = work();
    posted.put("laser", laser());
    posted.put("effect", "right");
    FilledBench bench = new FilledBench(owner, other.makes("reports", posted));
    for (BenchKind kind : BenchKind.values()) {
      bench.ids.put(kind, bench.make(kind));
    }
    return bench;
  }

  static String path(BenchKind kind) {
    return kind.lines().replace(".jsonl", "");
  }

  String path(BenchKind kind, String more) {
    return "/api/v1/" + path(kind) + "/" + ids.get(kind) + more;
  }

  /** Everything a program sees of it, by address. */
  Map<String, Object> seen(Person by, Map<BenchKind, String> under) {
    Map<String, Object> all = new LinkedHashMap<>();
    for (BenchKind kind : BenchKind.values()) {
      // machines are asked for as a list only
      Response answer =
          kind == BenchKind.MACHINE
              ? by.asks().get("/api/v1/machines")
              : by.asks().get("/api/v1/" + path(kind) + "/" + under.get(kind));
      all.put(kind.code(), answer.then().statusCode(200).extract().path("$"));
    }
    all.put(
        "revisions",
        by.asks()
            .get("/api/v1/recipes/" + under.get(BenchKind.RECIPE) + "/revisions")
            .then()
            .statusCode(200)
            .extract()
            .path("$"));
    return all;
  }

  private String make(BenchKind kind) throws IOException {
    return switch (kind) {
      case MACHINE -> machine();
      case GRID -> grid();
      case RECIPE -> recipe();
      case SAMPLE -> sample();
      case LOT -> lot();
      case FIXTURE -> fixture();
      case EYEWEAR ->
          owner.makes(
              "eyewear",
              Map.of("name", ODD, "marking", "OD 6 @ 900-1100 nm", "notes", "two\nlines"));
      case ROOM ->
          owner.makes(
              "rooms",
              Map.of(
                  "name",
                  "Shed " + ODD,
                  "volume",
                  "60 m3",
                  "machines",
                  List.of(ids.get(BenchKind.MACHINE)),
                  "lines",
                  List.of("Lamp off", ODD),
                  "checks",
                  List.of(
                      Map.of("check", "extinguisher", "everyDays", 30, "lastOn", "2026-10-01"))));
    };
  }

  private String machine() {
    Map<String, Object> old = new HashMap<>(laser());
    old.put("name", "Sold");
    String sold = owner.makes("machines", old);
    owner.asks().delete("/api/v1/machines/" + sold).then().statusCode(204);
    Map<String, Object> machine = new HashMap<>(laser());
    machine.put("name", "Tube " + ODD);
    machine.put("housing", "closed");
    machine.put("divergence", Map.of("value", 2.5, "unit", "mrad"));
    return owner.makes("machines", machine);
  }

  private String grid() throws IOException {
    Map<String, Object> grid = work();
    grid.put("name", "Grid " + ODD);
    grid.put("laser", laser());
    grid.put(
        "axes",
        Map.of(
            "across", Map.of("setting", "power", "values", List.of("40 %", "60 %")),
            "down", Map.of("setting", "speed", "values", List.of("300 mm/s"))));
    String id = owner.makes("grids", grid);
    photo("grids/" + id);
    owner
        .asks()
        .body(Map.of("corners", List.of(at(0.1, 0.1), at(0.9, 0.1), at(0.9, 0.8), at(0.1, 0.8))))
        .put("/api/v1/grids/" + id + "/photo")
        .then()
        .statusCode(200);
    owner
        .asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("effects", List.of(List.of("too-little", "right"))))
        .put("/api/v1/grids/" + id + "/results")
        .then()
        .statusCode(200);
    return id;
  }

  private static Map<String, Double> at(double x, double y) {
    return Map.of("x", x, "y", y);
  }

  private String recipe() {
    Map<String, Object> recipe = work();
    recipe.put("name", "Coasters " + ODD);
    recipe.put("folder", "Fair");
    recipe.put("machine", ids.get(BenchKind.MACHINE));
    recipe.put("notes", "Mask it first.");
    recipe.put("cameFrom", Map.of("report", report));
    recipe.put("fixture", ids.get(BenchKind.FIXTURE));
    recipe.put("position", 6);
    recipe.put("room", ids.get(BenchKind.ROOM));
    recipe.put("steps", List.of("Mask it", ODD));
    String id = owner.makes("recipes", recipe);
    shrinkFixture();
    for (int version = 1; version < 3; version++) {
      recipe.put("settings", settings(60 + version + " %"));
      recipe.put("reason", "Too pale " + ODD);
      owner
          .asks()
          .header("If-Match", "\"" + version + "\"")
          .body(recipe)
          .put("/api/v1/recipes/" + id)
          .then()
          .statusCode(200);
    }
    keyed(Map.of()).post("/api/v1/recipes/" + id + "/uses").then().statusCode(200);
    Map<String, Object> child = work();
    child.put("name", "Child");
    child.put("machine", ids.get(BenchKind.MACHINE));
    child.put("cameFrom", Map.of("recipe", id, "version", 2));
    owner.makes("recipes", child);
    return id;
  }

  /** Position 6 of the recipe is there no more. */
  private void shrinkFixture() {
    String path = path(BenchKind.FIXTURE, "");
    int version = owner.asks().get(path).path("version");
    Map<String, Object> small = new HashMap<>(jig());
    small.put("rows", 1);
    owner
        .asks()
        .header("If-Match", "\"" + version + "\"")
        .body(small)
        .put(path)
        .then()
        .statusCode(200);
  }

  private String sample() {
    owner.makes("samples", Map.of("report", report, "box", "Box 1"));
    return owner.makes(
        "samples", Map.of("grid", ids.get(BenchKind.GRID), "what", ODD, "notes", "a\nb"));
  }

  private String lot() throws IOException {
    String gone = owner.makes("lots", delivery("Gone"));
    owner.asks().delete("/api/v1/lots/" + gone).then().statusCode(204);
    String id = owner.makes("lots", delivery("North " + ODD));
    photo("lots/" + id);
    return id;
  }

  private static Map<String, Object> delivery(String supplier) {
    return Map.of(
        "supplier",
        supplier,
        "material",
        "maple",
        "received",
        9,
        "usable",
        8,
        "inspection",
        "ok",
        "date",
        "2026-10-02");
  }

  private static Map<String, Object> jig() {
    return Map.of(
        "name", "Jig " + ODD, "rows", 2, "columns", 3, "pitchX", "50 mm", "pitchY", "2 in");
  }

  private String fixture() throws IOException {
    String id = owner.makes("fixtures", jig());
    photo("fixtures/" + id);
    return id;
  }

  private void photo(String of) throws IOException {
    given()
        .header("Authorization", "Bearer " + owner.token())
        .contentType("application/octet-stream")
        .body(Pictures.of(200, 100, "jpeg"))
        .put("/api/v1/" + of + "/photo")
        .then()
        .statusCode(200);
  }

  RequestSpecification keyed(Object body) {
    return owner.asks().header("Idempotency-Key", UUID.randomUUID().toString()).body(body);
  }

  static Map<String, Object> laser() {
    return Map.of(
        "source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
  }

  private static Map<String, Object> work() {
    Map<String, Object> work = new HashMap<>();
    work.put("material", "birch plywood");
    work.put("process", "surface-engraving");
    work.put("settings", settings("60 %"));
    return work;
  }

  private static Map<String, Object> settings(String power) {
    return Map.of("power", power, "speed", "400 mm/s", "lineSpacing", "0.1 mm");
  }
}

package club.emberwell.matrix;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionEvidence;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.CautionScope;
import club.emberwell.catalog.store.CautionCare;
import club.emberwell.catalog.store.Deed;
import club.emberwell.contract.HeldToContract;
import club.emberwell.exchange.open.PackageMaker;
import club.emberwell.matrix.Crew.Somebody;
import club.emberwell.matrix.Routes.Route;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;

/**
 * Whatever page or file shows settings of a cautioned material shows the caution. Each material
 * here is burned at a speed that nothing else has; every address of the route matrix is asked, by
 * itself and for that material, and an answer that holds the speed has to hold the caution's
 * sentence or its id. So a route that comes tomorrow is asked too. What may do without stands with
 * its reason in {@code settings-without-caution.csv}.
 */
@QuarkusTest
@TestProfile(CautionWalkTest.OwnClub.class)
class CautionWalkTest {
  /** A club in which nothing of other tests was burned. */
  public static final class OwnClub implements QuarkusTestProfile {}

  /** What an address without parameters is asked besides: search, filled forms, comparisons. */
  private static final List<String> ASKED =
      List.of(
          "?q=@material",
          "?material=@material&coating=@coating&machine=@machine&report=@report"
              + "&with=q%3D@material&with=material%3Dslate",
          "?from=@report");

  /** Where the speed itself has to be asked for; elsewhere a page would only echo its address. */
  private static final Map<String, String> ASKED_THERE =
      Map.of(
          "/grids/plan",
          "?machine=@machine&material=@material&coating=@coating&process=surface-engraving"
              + "&settings.lineSpacing=0.1+mm&axes.across.setting=power&axes.across.values=40%3B60"
              + "+%25&axes.down.setting=speed&axes.down.values=@speed");

  /** Places of accounts and of the club, which no search and no form of a work leads to. */
  private static final String UNASKED =
      "/(api/v1/)?(desk|me|help|sign-|club|tokens|webhooks|members|problems|first-owner)\\b.*";

  @Inject Crew crew;
  @Inject CautionCare cautions;
  @Inject PackageMaker data;

  /**
   * A material with what has to stand beside its settings.
   *
   * @param rule id of its heaviest caution
   * @param things made of it
   */
  private record Case(Matter matter, String rule, Things things, Set<String> seen) {
    /** Talk is tied to materials of the vocabulary alone. */
    boolean reads(Line line) {
      boolean talk = line.things().matches(".*@(question|unseen|notice|answer|photoOf).*");
      return line.route().method().equals("GET") && !(talk && rule.equals("unidentified-material"));
    }
  }

  /** Nothing can be posted of what is prohibited, so this became so after it was burned. */
  private static final String BANNED_LATER = "cork-is-prohibited-here";

  /** So many addresses show settings of each at least, else this test sees too little. */
  private static final int LEAST = 30;

  private final Set<String> excused = excused();
  private final Set<String> excusesUsed = new TreeSet<>();
  private final Map<String, String> bare = new TreeMap<>();

  @Test
  void whateverShowsSettingsShowsTheCaution() {
    Somebody author = crew.person("member", "active");
    Somebody owner = crew.person("owner", "active");
    List<Case> cases =
        Stream.of(
                List.of("nylon", "", "431", "nitrogen-polymers-hydrogen-cyanide"),
                List.of("pom", "", "433", "pom-formaldehyde"),
                List.of("slate", "powder-coat", "443", "coatings-unknown-pigments"),
                List.of("cork", "", "437", BANNED_LATER),
                List.of("zorblax sheet", "", "439", "unidentified-material"))
            .map(cells -> made(cells, author))
            .toList();
    prohibit(owner.id());
    data.make();
    for (Line line : Line.all()) {
      for (Somebody who : List.of(author, owner)) {
        walk(line, who, who == author, cases);
      }
    }
    assertTrue(
        bare.isEmpty(),
        () ->
            bare.entrySet().stream()
                .map(one -> one.getKey() + "  " + one.getValue())
                .collect(Collectors.joining("\n", "Settings without their caution:\n", "")));
    Set<String> idle = new TreeSet<>(excused);
    idle.removeAll(excusesUsed);
    assertEquals(Set.of(), idle, "excused for nothing");
    cases.forEach(
        each ->
            assertTrue(
                each.seen().size() >= LEAST,
                () -> each.rule() + " is shown at " + each.seen() + " only"));
  }

  private Case made(List<String> cells, Somebody author) {
    String coating = cells.get(1).isEmpty() ? null : cells.get(1);
    Matter matter = new Matter(cells.get(0), coating, cells.get(2) + " mm/s");
    Things things = new Things(crew, author, matter);
    Case made = new Case(matter, cells.get(3), things, new TreeSet<>());
    Stream.of("report", "recipe", "grid", "sample", "lot", "watch", "feed", "find")
        .forEach(things::get);
    Line.all().stream()
        .filter(line -> made.reads(line) && !line.route().path().contains("{file}"))
        .forEach(line -> line.address(things));
    return made;
  }

  private void walk(Line line, Somebody who, boolean asksMore, List<Case> cases) {
    boolean reads = line.route().method().equals("GET");
    if (!reads) {
      cases.stream()
          .filter(each -> !body(line.route(), each.things()).isEmpty())
          .forEach(each -> look(List.of(each), line, send(line, who, each.things())));
    } else if (line.route().path().contains("{file}")) {
      List<String> names = given().get("/api/v1/data").path("files.name");
      names.forEach(name -> look(cases, line, get(line, "/data/" + name, who)));
    } else if (line.route().path().contains("{")) {
      cases.stream()
          .filter(each -> each.reads(line))
          .forEach(each -> look(List.of(each), line, get(line, line.address(each.things()), who)));
    } else {
      look(cases, line, get(line, line.route().path(), who));
      if (asksMore && !line.route().path().matches(UNASKED)) {
        cases.forEach(each -> askMore(line, who, each));
      }
    }
  }

  private void askMore(Line line, Somebody who, Case each) {
    List<String> queries = new ArrayList<>(ASKED);
    queries.addAll(Optional.ofNullable(ASKED_THERE.get(line.route().path())).stream().toList());
    for (String query : queries) {
      look(List.of(each), line, get(line, line.route().path() + filled(query, each), who));
    }
  }

  private void prohibit(UUID by) {
    cautions.add(
        new CautionRule(
            BANNED_LATER,
            CautionClass.BAN,
            new CautionScope(List.of("cork"), List.of(), false, null, List.of(), List.of(), null),
            new CautionRule.Says("smoke", "smokes as nothing else does", "It smokes.", "Do not."),
            CautionRule.Handling.NOT_SAID,
            new CautionEvidence("our club", "general", "judgement", false, null, List.of()),
            List.of()),
        new Deed(by, "It smokes."));
  }

  private static String filled(String query, Case each) {
    Matter matter = each.matter();
    String full =
        query
            .replace("@material", plus(matter.material()))
            .replace("@coating", matter.coating() == null ? "" : matter.coating())
            .replace("@speed", plus(matter.speed()) + "%3B500+mm/s");
    for (String name : List.of("report", "machine")) {
      full = full.replace("@" + name, each.things().get(name));
    }
    return full;
  }

  private static String plus(String text) {
    return text.replace(' ', '+');
  }

  private static Response get(Line line, String address, Somebody who) {
    return by(line, who).accept("*/*").get(address);
  }

  private static RequestSpecification by(Line line, Somebody who) {
    // an address is also asked what it does not take
    RequestSpecification request =
        given()
            .noFiltersOfType(HeldToContract.class)
            .redirects()
            .follow(false)
            .urlEncodingEnabled(false);
    return line.route().api()
        ? request.header("Authorization", "Bearer " + who.token())
        : request.cookie("emberwell", who.cookie());
  }

  private static Response send(Line line, Somebody who, Things things) {
    return by(line, who)
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .header("If-Match", "\"1\"")
        .contentType(ContentType.JSON)
        .body(body(line.route(), things))
        .request(line.route().method(), line.address(things));
  }

  /** What is written of settings, by where it goes. */
  private static Map<String, Object> body(Route route, Things things) {
    String path = route.path();
    if (!Set.of("POST", "PUT").contains(route.method())) {
      return Map.of();
    }
    if (path.matches("/api/v1/reports(/\\{id}(/repeats)?)?")) {
      return things.reported();
    }
    if (path.matches("/api/v1/recipes(/\\{id})?")) {
      Map<String, Object> recipe = new HashMap<>(things.recipe());
      if (path.endsWith("}")) {
        recipe.put("reason", "A test.");
      }
      return recipe;
    }
    return path.matches("/api/v1/grids(/plan|/\\{id})?") ? things.grid() : Map.of();
  }

  private void look(List<Case> cases, Line line, Response answer) {
    String type = String.valueOf(answer.contentType());
    if (type.startsWith("image/png") || type.startsWith("image/jpeg")) {
      return;
    }
    String body = text(answer, type);
    String route = line.route().toString();
    for (Case each : cases) {
      if (!shows(body, each.matter().speed().replaceFirst(" .*", ""))) {
        continue;
      }
      each.seen().add(route);
      if (!holds(body, each.rule())) {
        if (excused.contains(route)) {
          excusesUsed.add(route);
        } else {
          bare.merge(route, each.rule(), (a, b) -> a.contains(b) ? a : a + " " + b);
        }
      }
    }
  }

  private static boolean shows(String body, String speed) {
    return Pattern.compile("(?<![\\w.:,-])" + speed + "(\\.0+)?(?![\\w.,-]*\\d)")
        .matcher(body)
        .find();
  }

  private static boolean holds(String body, String rule) {
    String hazard =
        CatalogFiles.cautions().stream()
            .filter(one -> one.id().equals(rule))
            .map(CautionRule::hazard)
            .findFirst()
            .orElse("smokes as nothing else does");
    String lower = body.toLowerCase(Locale.ROOT);
    return lower.contains(rule) || lower.contains(hazard.toLowerCase(Locale.ROOT));
  }

  private static String text(Response answer, String type) {
    byte[] bytes = answer.asByteArray();
    return type.contains("zip") ? unzipped(bytes) : new String(bytes, StandardCharsets.UTF_8);
  }

  private static String unzipped(byte[] bytes) {
    List<String> texts = new ArrayList<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry file = zip.getNextEntry(); file != null; file = zip.getNextEntry()) {
        texts.add(new String(zip.readAllBytes(), StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return String.join("\n", texts);
  }

  private static Set<String> excused() {
    Map<String, String> reasons = new LinkedHashMap<>();
    try (InputStream in =
        CautionWalkTest.class.getResourceAsStream("/settings-without-caution.csv")) {
      new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .map(line -> line.split(";", 3))
          .forEach(cells -> reasons.put(cells[0] + ";" + cells[1], cells[2]));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    reasons.forEach((route, reason) -> assertTrue(reason.length() > 10, route));
    return reasons.keySet();
  }
}

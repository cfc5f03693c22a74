package club.emberwell.web.desk;

import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.desk.SweptCatalog;
import club.emberwell.desk.home.Desk;
import club.emberwell.desk.home.Tasks;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The desk in a browser without scripts. */
@QuarkusTest
class DeskPagesTest {
  @Inject Staff staff;
  @Inject SweptCatalog swept;
  @Inject CatalogService catalog;

  private String report(Person author) {
    return author
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(
            Map.of(
                "laser",
                Map.of(
                    "source",
                    "co2",
                    "wavelength",
                    "10.6 um",
                    "ratedPower",
                    "40 W",
                    "motion",
                    "gantry"),
                "material",
                "maple",
                "process",
                "surface-engraving",
                "settings",
                Map.of("power", "60 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"),
                "effect",
                "right",
                "notes",
                "Words of " + UUID.randomUUID()))
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  @Inject EntityManager db;
  @Inject Members members;
  @Inject Desk desk;
  @Inject Tasks tasks;
  @Inject club.emberwell.desk.home.People people;

  private static final String DECIDE = "form[action$=decide]";

  @AfterEach
  void sweep() {
    swept.sweep("quillwood");
    swept.sweep("test-");
  }

  @Test
  void everyPageOfTheDeskIsTidyForModeratorsAndClosedToMembers() {
    Person author = People.join();
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    Browser member = Browser.of(author);
    String report = report(author);
    List<String> pages =
        List.of(
            "/desk",
            "/desk/waiting",
            "/desk/flags",
            "/desk/notes",
            "/desk/items/report/" + report,
            "/desk/members",
            "/desk/members/" + author.id(),
            "/desk/undos",
            "/desk/undos/new",
            "/desk/undos/new?rule=burst&since=2026-01-01",
            "/desk/undos/new?member=" + author.id() + "&since=2026-01-01",
            "/desk/rules",
            "/desk/rules/burst",
            "/desk/rules/first-look",
            "/desk/words",
            "/desk?by=oldest",
            "/desk/members?new=week",
            "/desk/notes/burst/" + author.id(),
            "/desk/terms/material",
            "/desk/terms/material/maple",
            "/desk/terms/material/hdf/merge?into=mdf",
            "/desk/cautions",
            "/desk/log",
            "/desk/log?by=nobody&from=2026-01-01");
    for (String page : pages) {
      assertEquals(200, moderator.get(page).status(), page);
      moderator.tidy();
      assertEquals(403, member.get(page).status(), page);
    }
    assertEquals(422, moderator.get("/desk/log?from=soon").status());
    assertEquals(422, moderator.get("/desk/undos/new?rule=burst&since=soon").status());
    assertEquals(404, moderator.get("/desk/terms/plants").status());
  }

  /** What a program reads of it, and that it read it. */
  private static void assertDeskTold(Person author, String report) {
    author.asks().get("/api/v1/inbox").then().body("newDecisions", equalTo(1));
    String at =
        author
            .asks()
            .get("/api/v1/decisions")
            .then()
            .statusCode(200)
            .body("items[0].item.id", equalTo(report))
            .body("items[0].reason", equalTo("Please say which lens."))
            .extract()
            .path("items[0].at");
    author.asks().body(Map.of("told", at)).put("/api/v1/inbox/read").then().statusCode(204);
    author.asks().get("/api/v1/inbox").then().body("newDecisions", equalTo(0));
    author
        .asks()
        .body(Map.of("told", at, "find", 1))
        .put("/api/v1/inbox/read")
        .then()
        .statusCode(400)
        .body("detail", equalTo("Send one of upTo, find and told."));
  }

  @Test
  void aMemberFlagsAModeratorAnswersAndTheAuthorReadsWhy() {
    Person author = People.join();
    String report = report(author);
    Browser flagger = Browser.of(People.join());
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    flagger.get("/flags/report/" + report).tidy();
    flagger.send("main form", Map.of("note", "Odd."));
    assertEquals(422, flagger.status());
    flagger.send("main form", Map.of("reason", "wrong-numbers", "note", "Odd."));
    assertEquals(303, flagger.status());

    String desk = "/desk/items/report/" + report;
    moderator.get(desk).tidy();
    moderator.send(DECIDE, Map.of("reason", ""), Map.of("action", "hold"));
    assertEquals(422, moderator.status());
    moderator.send(DECIDE, Map.of("reason", "Please say which lens."), Map.of("action", "hold"));
    assertEquals(303, moderator.status());
    assertTrue(moderator.location().startsWith("/desk/next"), moderator.location());
    assertEquals("1 unread", flagger.get("/").page().select(".badge").text());
    String answer = flagger.get("/inbox").tidy().page().text();
    assertEquals(1, flagger.page().select("main .tag-new").size());
    flagger.send("form[action=/inbox/read]", Map.of("at", "yesterday"));
    assertTrue(flagger.status() >= 400 && flagger.status() < 500);
    flagger.get("/inbox").send("form[action=/inbox/read]", Map.of());
    assertTrue(flagger.follow().page().select(".badge, .tag-new").isEmpty());
    assertTrue(answer.contains("a moderator agreed. Please say which lens."), answer);
    assertTrue(flagger.get("/flags").page().text().contains("Please say which lens."));
    assertEquals("1 unread", Browser.of(author).get("/").page().select(".badge").text());
    assertDeskTold(author, report);
    Browser writer = Browser.of(author);
    assertTrue(writer.get("/").page().select(".badge").isEmpty());
    assertTrue(writer.get("/reports/" + report).page().text().contains("Please say which lens."));
    assertTrue(writer.get("/flags").tidy().page().text().contains("Please say which lens."));
    assertEquals(404, Browser.of(People.join()).get("/reports/" + report).status());
    assertTrue(moderator.get(desk).tidy().page().text().contains("held until something"));
    moderator.send(DECIDE, Map.of("reason", "Fine."), Map.of("action", "restore"));
    assertEquals(303, moderator.status());
  }

  @Test
  void twoModeratorsAtOneTermSeeBothAndLoseNothing() {
    String word = "quillwood-" + UUID.randomUUID().toString().substring(0, 8);
    Browser first = Browser.of(staff.person(Role.MODERATOR));
    Browser second = Browser.of(staff.person(Role.MODERATOR));
    addTerm(word);
    String page = "/desk/terms/material/" + word;
    first.get(page).tidy();
    second.get(page);
    String form = "form[action$=edit]";
    second.send(
        form, Map.of("note", "Grows by the sea.", "respondsAlike", "yes", "reason", "Known."));
    assertEquals(303, second.status());
    first.send(form, Map.of("note", "Grows in marshes.", "parent", "Wood", "reason", "Known."));
    assertEquals(412, first.status());
    String both = first.page().select("[role=alert] tbody").text();
    assertTrue(both.contains("by the sea") && both.contains("in marshes"), both);
    assertEquals("Grows in marshes.", first.field("note"));
    first.tidy();
    first.send(form, Map.of());
    assertEquals(303, first.status());
    Term term = catalog.vocabulary().term(TermKind.MATERIAL, word).get();
    assertEquals("wood", term.parent());
    assertFalse(term.respondsAlike(), "as the one who came later left it");
  }

  @Test
  void whatIsDecidedAboutStandsBesideTheDecisionAndOnlyWhatCanBeIsOffered() {
    Person author = People.join();
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    String desk = "/desk/items/report/" + report(author);
    moderator.get(desk);
    assertTrue(moderator.page().text().contains("400 mm/s"), moderator.page().text());
    assertEquals(List.of("hold", "remove"), choices(moderator));
    moderator.send(DECIDE, Map.of("reason", "Twice."), Map.of("action", "remove"));
    assertEquals(List.of("restore", "hold"), choices(moderator.get(desk)));
  }

  private void addTerm(String slug) {
    staff
        .person(Role.MODERATOR)
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(Map.of("value", slug, "label", slug, "reason", "Missing."))
        .post("/api/v1/desk/terms/material")
        .then()
        .statusCode(200);
  }

  private static List<String> choices(Browser browser) {
    return browser.page().select(DECIDE + " button[name=action]").eachAttr("value");
  }

  @Test
  void aWordIsFiledFromItsPageAndACautionIsProposedAndAccepted() {
    String word = "Quillwood " + UUID.randomUUID().toString().substring(0, 8);
    catalog.queueUnfiled(TermKind.MATERIAL, word, Instant.now());
    UUID id =
        catalog.waiting(Part.FIRST).rows().stream()
            .filter(w -> w.written().equals(word))
            .findFirst()
            .map(w -> w.id())
            .orElse(null);
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    if (id != null) {
      moderator.get("/desk/words/" + id).tidy();
      moderator.send("form[action$=term]", Map.of());
      assertEquals(303, moderator.status());
    }
    Browser member = Browser.of(People.join());
    member.get("/cautions/new?material=maple").tidy();
    String caution = "test-" + UUID.randomUUID().toString().substring(0, 8);
    Map<String, String> filled =
        Map.of(
            "id", caution,
            "agent", "fine dust",
            "hazard", "irritates the airways " + caution,
            "claim", "Dust irritates.",
            "advice", "Extract at the source.",
            "evidence.source", "common practice, no source",
            "reason", "It is missing.");
    member.send("main form", Map.of("id", caution));
    assertEquals(422, member.status());
    member.send("main form", filled);
    assertEquals(303, member.status());
    moderator.get("/desk/cautions").tidy();
    String proposal =
        moderator.page().select("a[href^=/cautions/proposals/]").stream()
            .filter(a -> a.text().contains(caution))
            .findFirst()
            .orElseThrow()
            .attr("href");
    moderator.get(proposal).tidy();
    moderator.send("main form", Map.of("reason", ""), Map.of("accept", "yes"));
    assertEquals(303, moderator.status());
    moderator.get("/desk/cautions/" + caution).tidy();
    moderator.get("/cautions/" + caution + "/propose").tidy();
    assertEquals(200, moderator.status());
  }

  @Test
  void oneGoesThroughWhatWaitsOneByOneAndNotesOfARuleAreDecidedAndUndoneInOne() {
    Person author = People.join();
    List<String> reports = List.of(report(author), report(author), report(author));
    reports.forEach(this::notice);
    Person judge = staff.person(Role.MODERATOR);
    Browser moderator = Browser.of(judge);
    String group = "/desk/notes/far-outside/" + author.id();
    String home = moderator.get("/desk").tidy().page().text();
    assertTrue(home.contains(" wait: ") || home.contains(" waits: "), home);
    moderator.get("/desk/notes").tidy();
    assertEquals(1, moderator.page().select("a[href=" + group + "]").size());
    moderator.get(turnTo(moderator, group)).tidy();
    assertFalse(moderator.page().select("main a:contains(Skip)").isEmpty());
    moderator.get(group).tidy();
    assertEquals(3, moderator.page().select("main .card").size());
    String form = "form[action=" + group + "]";
    moderator.send(form, Map.of("reason", ""), Map.of("action", "hold"));
    assertEquals(422, moderator.status());
    moderator.send(form, Map.of("reason", "Is the spacing right?"), Map.of("action", "hold"));
    assertEquals(303, moderator.status());
    assertEquals(404, judgeOf(reports.get(0)));
    String next = moderator.follow().location();
    moderator.get(next).tidy();
    moderator.send("form[action$=restore]", Map.of());
    assertEquals(303, moderator.status());
    assertEquals(200, judgeOf(reports.get(0)));
    assertEquals(3, moderator.get(group).page().select("main .card").size());
    moderator.send(form, Map.of("reason", ""), Map.of("action", "leave"));
    assertEquals(303, moderator.status());
    assertTrue(moderator.get(group).tidy().page().text().contains("No open notes."));
  }

  /** Where something is decided in its turn. */
  static String turnTo(Browser moderator, String path) {
    String at = moderator.get("/desk/next").location();
    for (int i = 0; i < 300 && !at.startsWith(path); i++) {
      String place = at.substring(at.indexOf("place=") + "place=".length());
      at = moderator.get("/desk/next?by=worst&after=" + place).location();
    }
    assertTrue(at.startsWith(path), at);
    return at;
  }

  private static int judgeOf(String report) {
    return People.join().asks().get("/api/v1/reports/" + report).statusCode();
  }

  private void notice(String report) {
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        """
                        insert into desk_rule_note (rule, entry_id, detail, mode, at)
                        values ('far-outside', cast(:id as uuid), 'far', 'note', now())""")
                    .setParameter("id", report)
                    .executeUpdate());
  }

  @Test
  void theFirstScreenTakesFewStatementsHoweverMuchWaits() {
    Person author = People.join();
    notice(report(author));
    Actor judge =
        members.byId(UUID.fromString(staff.person(Role.MODERATOR).id())).orElseThrow().actor();
    int few = home(judge);
    for (int i = 0; i < 4; i++) {
      notice(report(People.join()));
    }
    assertEquals(few, home(judge));
    assertEquals(4, few);
    assertEquals(1, StatementCount.of(() -> people.find(judge, "", Part.FIRST)).size());
  }

  private int home(Actor judge) {
    return StatementCount.of(
            () -> {
              desk.waiting(judge);
              tasks.first(judge, "");
            })
        .size();
  }
}

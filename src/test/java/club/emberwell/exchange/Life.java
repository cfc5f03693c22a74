package club.emberwell.exchange;

import static io.restassured.RestAssured.given;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.grid.PlannedGrids;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Members;
import club.emberwell.member.door.Invitations;
import club.emberwell.report.photo.Pictures;
import club.emberwell.talk.AcceptedAnswers;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.Ties;
import club.emberwell.talk.WrittenTalk;
import club.emberwell.talk.watch.Watches;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Somebody who has left traces in every corner of a club. */
@ApplicationScoped
class Life {
  @Inject Members members;
  @Inject TalkService talk;
  @Inject AcceptedAnswers accepted;
  @Inject Watches watches;
  @Inject Flags flags;
  @Inject Invitations invitations;
  @Inject Audit audit;
  @Inject PlannedGrids grids;
  @Inject EntityManager db;

  /**
   * What came of it.
   *
   * @param neighbour somebody else, who speaks of the person
   * @param report seen by all, with a note and a photo
   * @param repeat the neighbour's repeat of it
   * @param question answered by the neighbour
   */
  record Lived(
      Person person, String email, Person neighbour, String report, String repeat, UUID question) {
    Actor actor(Members members) {
      return members.byId(UUID.fromString(person.id())).orElseThrow().actor();
    }
  }

  Lived live() throws IOException {
    Person person = People.join();
    String email = person.handle() + "@alder-mail.example";
    person
        .asks()
        .body(Map.of("email", email, "password", People.PASSWORD))
        .post("/api/v1/me/email")
        .then()
        .statusCode(204);
    Person neighbour = People.join();
    String report = report(person);
    photo(person, "reports/" + report);
    grid(person);
    String repeat = repeat(neighbour, report, person.handle());
    stock(person, report, email);
    recipe(person, report, email);
    Actor actor = members.byId(UUID.fromString(person.id())).orElseThrow().actor();
    Actor other = members.byId(UUID.fromString(neighbour.id())).orElseThrow().actor();
    photoOfGrid(person, grids.plan(actor, 2));
    comments(actor, other, UUID.fromString(report), UUID.fromString(repeat));
    UUID question = talk(actor, other, person.handle(), email);
    photo(person, "questions/" + question);
    watches.add(actor, "q=birch", person.handle() + "'s birch", false);
    flags.flag(
        actor,
        new EntryRef(EntryKind.REPORT, UUID.fromString(repeat)),
        "off-topic",
        "says " + person.handle());
    invitations.make(actor, new Invitations.Draft("a friend of " + person.handle(), 1, 1));
    traces(actor, other, email);
    return new Lived(person, email, neighbour, report, repeat, question);
  }

  private static String report(Person person) {
    String machine =
        keyed(
                person,
                Map.of(
                    "name", person.handle() + "'s tube",
                    "source", "co2",
                    "wavelength", "10.6 um",
                    "ratedPower", "40 W",
                    "motion", "gantry",
                    "regime", "cw"))
            .post("/api/v1/machines")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    Map<String, Object> report = body();
    report.put("machine", machine);
    report.put("notes", "Burned by " + person.handle() + " in the shed behind the mill.");
    report.put("lot", person.handle() + " 7");
    return keyed(person, report)
        .post("/api/v1/reports")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static void grid(Person person) {
    Map<String, Object> grid = body();
    grid.remove("effect");
    grid.put("name", person.handle() + "'s grid");
    grid.put("notes", "For the shed behind the mill of " + person.handle());
    grid.put(
        "laser",
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry"));
    grid.put(
        "axes",
        Map.of(
            "across", Map.of("setting", "power", "values", List.of("40 %", "60 %")),
            "down", Map.of("setting", "speed", "values", List.of("300 mm/s"))));
    keyed(person, grid).post("/api/v1/grids").then().statusCode(201);
  }

  static Map<String, Object> body() {
    Map<String, Object> report = new HashMap<>();
    report.put("material", "birch plywood");
    report.put("process", "surface-engraving");
    report.put("settings", Map.of("power", "100 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"));
    report.put("effect", "right");
    return report;
  }

  private static void photo(Person person, String of) throws IOException {
    given()
        .header("Authorization", "Bearer " + person.token())
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .contentType("application/octet-stream")
        .body(Pictures.of(200, 100, "jpeg"))
        .queryParam("caption", "By " + person.handle())
        .post("/api/v1/" + of + "/photos")
        .then()
        .statusCode(201);
  }

  private static void photoOfGrid(Person person, String grid) throws IOException {
    given()
        .header("Authorization", "Bearer " + person.token())
        .contentType("application/octet-stream")
        .body(Pictures.of(200, 100, "jpeg"))
        .put("/api/v1/grids/" + grid + "/photo")
        .then()
        .statusCode(200);
  }

  /** A kept piece of the report, and a lot. */
  private static void stock(Person person, String report, String email) throws IOException {
    String says = "of " + person.handle() + ", " + email;
    Map<String, Object> lot =
        Map.of(
            "supplier",
            "Shop " + says,
            "batch",
            says.substring(0, Math.min(80, says.length())),
            "material",
            "maple",
            "received",
            9,
            "usable",
            8,
            "notes",
            says,
            "shared",
            true);
    keyed(person, Map.of("report", report, "box", "Box " + says, "notes", says))
        .post("/api/v1/samples")
        .then()
        .statusCode(201);
    String made =
        keyed(person, lot).post("/api/v1/lots").then().statusCode(201).extract().path("id");
    keyed(person, Map.of("name", "Jig", "place", says, "rows", 1, "columns", 1, "notes", says))
        .post("/api/v1/fixtures")
        .then()
        .statusCode(201);
    given()
        .header("Authorization", "Bearer " + person.token())
        .contentType("application/octet-stream")
        .body(Pictures.of(200, 100, "jpeg"))
        .put("/api/v1/lots/" + made + "/photo")
        .then()
        .statusCode(200);
    keyed(person, Map.of("name", "Pair " + says, "marking", "OD 6 @ 900-1100 nm", "notes", says))
        .post("/api/v1/eyewear")
        .then()
        .statusCode(201);
    keyed(
            person,
            Map.of(
                "name",
                "Shed " + says,
                "volume",
                "60 m3",
                "lines",
                List.of("The dog is outside."),
                "notes",
                says))
        .post("/api/v1/rooms")
        .then()
        .statusCode(201);
  }

  /** A recipe of the report, changed once. */
  private static void recipe(Person person, String report, String email) {
    String says = "of " + person.handle() + ", " + email + ", from the shed behind the mill";
    String machine = person.asks().get("/api/v1/machines").path("items[0].id");
    Map<String, Object> recipe = body();
    recipe.remove("effect");
    recipe.put("machine", machine);
    recipe.put("name", "Signs of " + person.handle());
    recipe.put("folder", person.handle());
    recipe.put("notes", says);
    recipe.put("steps", List.of("Mind the knots."));
    recipe.put("cameFrom", Map.of("report", report));
    String id =
        keyed(person, recipe).post("/api/v1/recipes").then().statusCode(201).extract().path("id");
    recipe.put("reason", "Told " + says);
    person
        .asks()
        .header("If-Match", "\"1\"")
        .body(recipe)
        .put("/api/v1/recipes/" + id)
        .then()
        .statusCode(200);
    String url =
        person
            .asks()
            .post("/api/v1/recipes/" + id + "/links")
            .then()
            .statusCode(201)
            .extract()
            .path("url");
    given().get("/api/v1/cards/" + url.replaceFirst(".*/", "")).then().statusCode(200);
  }

  private static String repeat(Person by, String report, String of) {
    Map<String, Object> laser = new HashMap<>();
    laser.put("source", "co2");
    laser.put("wavelength", "10.6 um");
    laser.put("ratedPower", "60 W");
    laser.put("motion", "gantry");
    laser.put("regime", "cw");
    Map<String, Object> repeat = new HashMap<>();
    repeat.put("laser", laser);
    repeat.put("effect", "right");
    repeat.put("notes", "Thanks, " + of + ", works here too. @" + of + " was right.");
    return keyed(by, repeat)
        .post("/api/v1/reports/" + report + "/repeats")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private UUID talk(Actor actor, Actor other, String handle, String email) {
    UUID question =
        talk.post(actor, EntryKind.QUESTION, posting("Who knows slate?", "Write to " + email))
            .entry()
            .id();
    talk.answer(other, question, answer("As " + handle + " knows, slow is better."));
    UUID foreign =
        talk.post(other, EntryKind.QUESTION, posting("What about cork?", "Is " + handle + " here?"))
            .entry()
            .id();
    UUID own = talk.answer(actor, foreign, answer("Yes, " + handle + " is.")).entry().id();
    accepted.accept(other, foreign, own, null);
    return question;
  }

  /** Each under the other's report. */
  private void comments(Actor actor, Actor other, UUID report, UUID repeat) {
    talk.comment(actor, repeat, answer("Glad it works, says " + actor.handle()));
    talk.comment(other, report, answer("Thanks to " + actor.handle()));
  }

  private static TalkPosting posting(String title, String text) {
    return TalkPosting.of(null, new WrittenTalk(title, text, Ties.NONE));
  }

  private static TalkPosting answer(String text) {
    return TalkPosting.of(null, WrittenTalk.untitled(text));
  }

  /** What lies about in tables that no service fills on demand. */
  private void traces(Actor actor, Actor other, String email) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              audit.record(
                  other,
                  "warn",
                  "member",
                  actor.memberId().toString(),
                  "because " + actor.handle() + " shouted",
                  Map.of("who", "it was " + actor.handle(), "list", List.of("for " + email)));
              insert(
                  "insert into mail_outbox (member_id, recipient, kind, subject, body,"
                      + " due_at) values (:member, :email, 'watch', 'Hello ' || :handle, :email,"
                      + " now() + interval '1 day')",
                  actor,
                  email);
              insert(
                  "insert into once_link (secret_hash, kind, member_id, email, created_at,"
                      + " expires_at) values (decode(md5(:handle), 'hex'), 'reset', :member,"
                      + " :email, now(), now() + interval '1 hour')",
                  actor,
                  email);
              insert(
                  "insert into webhook (id, member_id, label, url, events, secret, state, version,"
                      + " created_at, updated_at) values (:member, :member, 'Chat of ' || :handle,"
                      + " 'https://chat.example/' || :email, '{result.posted}', 'whsec_AAAA', 'on',"
                      + " 1, now(), now())",
                  actor,
                  email);
              insert(
                  "insert into webhook_delivery (id, webhook_id, event, entry_id, shown, body,"
                      + " state, due_at, created_at) select id, :member, 'result.posted', id, true,"
                      + " 'behind the mill of ' || :handle || :email, 'waiting', now(), now()"
                      + " from entry where member_id = :member and kind = 'report'",
                  actor,
                  email);
              insert(
                  "insert into identity_link (issuer, subject, member_id)"
                      + " values ('https://login.example', :handle || :email, :member)",
                  actor,
                  email);
            });
  }

  private void insert(String sql, Actor actor, String email) {
    db.createNativeQuery(sql)
        .setParameter("member", actor.memberId())
        .setParameter("handle", actor.handle())
        .setParameter("email", email)
        .executeUpdate();
  }

  static RequestSpecification keyed(Person person, Object body) {
    return person.asks().header("Idempotency-Key", UUID.randomUUID().toString()).body(body);
  }
}

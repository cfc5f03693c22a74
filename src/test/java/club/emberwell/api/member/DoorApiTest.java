package club.emberwell.api.member;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.club.ClubOptions.Door;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A club with a closed door, so that each test can open the one it tries. */
@QuarkusTest
@TestProfile(ClosedClub.class)
class DoorApiTest {
  @Inject ClubOptions club;
  @Inject Staff staff;
  @Inject EntityManager db;

  @BeforeEach
  void close() {
    club.door(Door.INVITATION);
  }

  private static Map<String, Object> newcomer() {
    Map<String, Object> body = new HashMap<>();
    body.put("handle", People.freshHandle());
    body.put("password", People.PASSWORD);
    return body;
  }

  private static ValidatableResponse join(Map<String, Object> body) {
    return People.json(body).post("/api/v1/members").then();
  }

  private static ValidatableResponse join(String invitation) {
    Map<String, Object> body = newcomer();
    body.put("invitation", invitation);
    return join(body);
  }

  private static Map<String, Object> invite(Person moderator, int uses) {
    return moderator
        .asks()
        .body(Map.of("note", "open evening", "uses", uses, "days", 7))
        .post("/api/v1/invitations")
        .then()
        .statusCode(201)
        .header("Cache-Control", "no-store")
        .extract()
        .path("");
  }

  @Test
  void anInvitationLetsInAsManyAsItSaysAndNoMore() {
    Person moderator = staff.person(Role.MODERATOR);
    String code = (String) invite(moderator, 2).get("code");
    assertEquals(43, code.length());
    join(code).statusCode(201).body("role", equalTo("member"));
    join(code).statusCode(201);
    join(code).statusCode(422).body("errors[0].pointer", equalTo("/invitation"));
    moderator
        .asks()
        .get("/api/v1/invitations")
        .then()
        .body("items[0].used", equalTo(2))
        .body("items[0].works", equalTo(false))
        .body("items[0].by.handle", equalTo(moderator.handle()))
        .body("items[0].code", nullValue());
    assertEquals(
        0L,
        db.createNativeQuery(
                "select count(*) from invitation where encode(code_hash, 'escape') = :code",
                Long.class)
            .setParameter("code", code)
            .getSingleResult());
  }

  @Test
  void aRefusedEntryUsesNoPlaceOfAnInvitation() {
    String code = (String) invite(staff.person(Role.MODERATOR), 1).get("code");
    Map<String, Object> bad = newcomer();
    bad.put("invitation", code);
    bad.put("password", "short");
    join(bad).statusCode(422);
    Map<String, Object> taken = newcomer();
    taken.put("invitation", code);
    taken.put("handle", staff.person(Role.MEMBER).handle());
    join(taken).statusCode(422).body("errors[0].pointer", equalTo("/handle"));
    join(code).statusCode(201);
  }

  @Test
  void oneTicketLetsOneInHoweverManyComeAtOnce() throws Exception {
    String code = (String) invite(staff.person(Role.MODERATOR), 1).get("code");
    ExecutorService crowd = Executors.newFixedThreadPool(6);
    try {
      List<Callable<Integer>> tries = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        tries.add(() -> join(code).extract().statusCode());
      }
      int let = 0;
      for (Future<Integer> each : crowd.invokeAll(tries)) {
        let += each.get() == 201 ? 1 : 0;
      }
      assertEquals(1, let);
    } finally {
      crowd.shutdownNow();
    }
  }

  @Test
  void anEndedAnOldAndAnInventedInvitationLetNobodyIn() {
    Person moderator = staff.person(Role.MODERATOR);
    Map<String, Object> ended = invite(moderator, 5);
    moderator.asks().delete("/api/v1/invitations/" + ended.get("id")).then().statusCode(204);
    moderator.asks().delete("/api/v1/invitations/" + ended.get("id")).then().statusCode(404);
    join((String) ended.get("code")).statusCode(422);
    Map<String, Object> old = invite(moderator, 5);
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        "update invitation set expires_at = now() where cast(id as text) = :id")
                    .setParameter("id", old.get("id"))
                    .executeUpdate());
    join((String) old.get("code")).statusCode(422);
    join("x".repeat(43)).statusCode(422);
    given().get("/invitation/" + "x".repeat(43)).then().statusCode(404);
  }

  @Test
  void anInvitationIsMadeWithinItsLimitsAndByModeratorsOnly() {
    Person moderator = staff.person(Role.MODERATOR);
    moderator
        .asks()
        .body(Map.of("note", "n".repeat(500), "uses", 0, "days", 4000))
        .post("/api/v1/invitations")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/note"))
        .body("errors.pointer", hasItem("/uses"))
        .body("errors.pointer", hasItem("/days"));
    staff
        .person(Role.MEMBER)
        .asks()
        .body(Map.of())
        .post("/api/v1/invitations")
        .then()
        .statusCode(403);
    given().get("/api/v1/invitations").then().statusCode(401);
  }

  @Test
  void manyInvitationsInARowHaveToWait() {
    Person moderator = staff.person(Role.MODERATOR);
    int status = 0;
    for (int i = 0; i < 25 && status != 429; i++) {
      status = moderator.asks().body(Map.of()).post("/api/v1/invitations").statusCode();
    }
    assertEquals(429, status);
  }

  @Test
  void aRequestWaitsUntilAModeratorSaysYes() {
    club.door(Door.REQUEST);
    Person moderator = staff.person(Role.MODERATOR);
    Map<String, Object> body = newcomer();
    join(body).statusCode(422).body("errors[0].pointer", equalTo("/request"));
    body.put("request", "I run a small gantry diode in a shed.\nA friend told me.");
    String id = join(body).statusCode(202).extract().path("id");
    Map<String, Object> proof =
        Map.of("handle", body.get("handle"), "password", People.PASSWORD, "label", "x");
    People.json(proof)
        .post("/api/v1/tokens")
        .then()
        .statusCode(403)
        .body("detail", containsString("waits"));
    moderator.asks().get("/api/v1/members/" + id).then().statusCode(404);
    moderator
        .asks()
        .get("/api/v1/requests")
        .then()
        .body("items.member.handle", hasItem((String) body.get("handle")));
    moderator
        .asks()
        .body(Map.of("accept", true))
        .post("/api/v1/requests/" + id + "/decision")
        .then()
        .statusCode(204);
    People.json(proof).post("/api/v1/tokens").then().statusCode(201);
    moderator
        .asks()
        .body(Map.of("accept", false, "reason", "late"))
        .post("/api/v1/requests/" + id + "/decision")
        .then()
        .statusCode(404);
  }

  @Test
  void aNoNeedsAReasonAndTellsItToThePerson() {
    club.door(Door.REQUEST);
    Person moderator = staff.person(Role.MODERATOR);
    Map<String, Object> body = newcomer();
    body.put("request", "Buy my lenses!");
    String id = join(body).statusCode(202).extract().path("id");
    moderator
        .asks()
        .body(Map.of("accept", false))
        .post("/api/v1/requests/" + id + "/decision")
        .then()
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/reason"));
    moderator
        .asks()
        .body(Map.of("accept", false, "reason", "This is no place to sell lenses."))
        .post("/api/v1/requests/" + id + "/decision")
        .then()
        .statusCode(204);
    People.json(Map.of("handle", body.get("handle"), "password", People.PASSWORD, "label", "x"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(403)
        .body("detail", containsString("no place to sell"));
    assertEquals(
        List.of("ask-to-join", "turn-away"),
        db.createNativeQuery("select action from audit where entity_id = :id order by seq")
            .setParameter("id", id)
            .getResultList());
  }

  @Test
  void ownersChangeTheClubAndEveryChangeIsLogged() {
    Person owner = staff.person(Role.OWNER);
    Map<String, Object> draft = new HashMap<>();
    draft.put("name", "The Alder Shed");
    draft.put("door", "request");
    draft.put("reading", "public");
    draft.put("localSignIn", true);
    draft.put("licence", "CC0 for numbers.");
    draft.put("notes", "We meet on Tuesdays.");
    draft.put("password", People.PASSWORD);
    String version = Staff.version();
    owner.asks().body(draft).put("/api/v1/club").then().statusCode(428);
    owner
        .asks()
        .header("If-Match", version)
        .body(draft)
        .put("/api/v1/club")
        .then()
        .statusCode(200)
        .body("name", equalTo("The Alder Shed"))
        .body("door", equalTo("request"));
    owner.asks().header("If-Match", version).body(draft).put("/api/v1/club").then().statusCode(412);
    given().get("/api/v1/club").then().body("notes", equalTo("We meet on Tuesdays."));
    String detail =
        (String)
            db.createNativeQuery(
                    "select cast(detail as text) from audit where action = 'change-club'"
                        + " order by seq desc limit 1")
                .getSingleResult();
    assertTrue(detail.contains("The Alder Shed"), detail);
    assertFalse(detail.contains("localSignIn"), "unchanged: " + detail);
  }

  @Test
  void badSettingsAreRefusedAtTheirFieldsAndModeratorsCannotChangeThem() {
    Map<String, Object> draft = new HashMap<>();
    draft.put("name", " ");
    draft.put("door", "ajar");
    draft.put("reading", "nobody");
    draft.put("localSignIn", false);
    draft.put("licence", "l".repeat(601));
    draft.put("notes", "n".repeat(2001));
    ValidatableResponse refused =
        staff
            .person(Role.OWNER)
            .asks()
            .header("If-Match", Staff.version())
            .body(draft)
            .put("/api/v1/club")
            .then()
            .statusCode(422);
    for (String each : List.of("name", "door", "reading", "localSignIn", "licence", "notes")) {
      refused.body("errors.pointer", hasItem("/" + each));
    }
    staff
        .person(Role.MODERATOR)
        .asks()
        .header("If-Match", Staff.version())
        .body(draft)
        .put("/api/v1/club")
        .then()
        .statusCode(403);
  }

  @Test
  void rolesAreGivenAndTakenButTheLastOwnerStays() {
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery("update member set role = 'member' where role = 'owner'")
                    .executeUpdate());
    Person owner = staff.person(Role.OWNER);
    Person before = staff.person(Role.MEMBER);
    give(owner, before, "moderator", "knows steel").statusCode(200);
    // a token made before does not grow with its owner
    before.asks().get("/api/v1/requests").then().statusCode(403);
    Person other = People.again(before);
    other.asks().get("/api/v1/requests").then().statusCode(200);
    owner
        .asks()
        .get("/api/v1/roles")
        .then()
        .body("items.handle", hasItem(other.handle()))
        .body("items[0].role", equalTo("owner"));
    give(owner, owner, "member", "tired").statusCode(403);
    give(owner, other, "owner", "shares the work").statusCode(200);
    give(owner, owner, "member", "tired").statusCode(200);
    give(owner, other, "member", "no").statusCode(403);
    give(other, other, "king", "").statusCode(422).body("errors.pointer", hasItem("/role"));
    other
        .asks()
        .body(Map.of("handle", "nobody-at-all", "role", "member", "reason", "x"))
        .post("/api/v1/roles")
        .then()
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/handle"));
  }

  private static ValidatableResponse give(Person by, Person to, String role, String reason) {
    return by.asks()
        .body(
            Map.of(
                "handle", to.handle(), "role", role, "reason", reason, "password", People.PASSWORD))
        .post("/api/v1/roles")
        .then();
  }
}

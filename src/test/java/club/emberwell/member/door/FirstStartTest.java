package club.emberwell.member.door;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.pace.Throttle;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** A new club outside the demo, from its first start to its first owner. */
@QuarkusTest
@TestProfile(FirstStartTest.NewClub.class)
@TestMethodOrder(OrderAnnotation.class)
class FirstStartTest {
  /** The settings a club starts with when nobody set anything. */
  public static class NewClub implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "emberwell.first.door",
          "invitation",
          "emberwell.first.reading-public",
          "false",
          "emberwell.limits.door.code-address",
          "8 in 1H, then 2S to 15M");
    }
  }

  @Inject FirstOwner first;
  @Inject EntityManager db;
  @Inject MemberRepository members;
  @Inject OwnerCodeRepository codes;
  @Inject Admissions admissions;
  @Inject Throttle throttle;
  @Inject DoorLimits limits;
  @Inject ClubOptions club;

  private static int found(String code, String handle) {
    Map<String, String> body = new HashMap<>();
    body.put("code", code);
    body.put("handle", handle);
    body.put("password", People.PASSWORD);
    return People.json(body).post("/api/v1/first-owner").statusCode();
  }

  @Test
  @Order(1)
  void aNewClubLetsInByInvitationAndShowsStrangersNothing() {
    given()
        .get("/api/v1/club")
        .then()
        .statusCode(200)
        .body("door", equalTo("invitation"))
        .body("reading", equalTo("members"))
        .body("localSignIn", equalTo(true));
    People.json(Map.of("handle", People.freshHandle(), "password", People.PASSWORD))
        .post("/api/v1/members")
        .then()
        .statusCode(403);
    given().get("/api/v1/reports").then().statusCode(401);
  }

  @Test
  @Order(2)
  void theStartLeftACodeOfWhichOnlyTheHashIsStored() {
    assertEquals(
        1L, db.createNativeQuery("select count(*) from owner_code", Long.class).getSingleResult());
    String code = first.issue().orElseThrow().code();
    // 5 bits a character: more than the 128 of OWASP ASVS 5.0.0, V11.5.1
    assertTrue(code.matches("([0-9A-Z]{4}-){6}[0-9A-Z]{4}"), code);
    assertEquals(
        0L,
        db.createNativeQuery(
                "select count(*) from owner_code where encode(code_hash, 'escape') like :code",
                Long.class)
            .setParameter("code", "%" + code + "%")
            .getSingleResult());
  }

  @Test
  @Order(3)
  void anOldAndAGuessedCodeMakeNobodyOwner() {
    String code = first.issue().orElseThrow().code();
    assertEquals(422, found("AAAA-AAAA-AAAA-AAAA-AAAA-AAAA", People.freshHandle()));
    endTheCode();
    assertEquals(422, found(code, People.freshHandle()));
    assertNotEquals(code, first.issue().orElseThrow().code());
    assertEquals(422, found(code, People.freshHandle()));
  }

  private void endTheCode() {
    QuarkusTransaction.requiringNew()
        .run(
            () -> db.createNativeQuery("update owner_code set expires_at = now()").executeUpdate());
  }

  @Test
  @Order(3)
  void nodesThatStartOnOneDatabaseSayTheSameCode() throws Exception {
    endTheCode();
    FirstOwner other = new FirstOwner(members, codes, admissions, throttle, limits, club);
    ExecutorService nodes = Executors.newFixedThreadPool(2);
    try {
      CyclicBarrier both = new CyclicBarrier(2);
      Future<FirstOwner.Issued> one = nodes.submit(() -> startsWith(both, first));
      Future<FirstOwner.Issued> two = nodes.submit(() -> startsWith(both, other));
      assertEquals(one.get(30, TimeUnit.SECONDS), two.get(30, TimeUnit.SECONDS));
      assertEquals(one.get(), other.issue().orElseThrow());
    } finally {
      nodes.shutdownNow();
    }
  }

  private static FirstOwner.Issued startsWith(CyclicBarrier both, FirstOwner node)
      throws Exception {
    both.await(30, TimeUnit.SECONDS);
    return node.issue().orElseThrow();
  }

  @Test
  @Order(4)
  void theLatestCodeMakesOneOwnerHoweverItIsTyped() {
    String code = first.issue().orElseThrow().code();
    People.json(Map.of("code", code, "handle", "x", "password", "short"))
        .post("/api/v1/first-owner")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/handle"))
        .body("errors.pointer", hasItem("/password"));
    String handle = People.freshHandle();
    assertEquals(201, found(code.toLowerCase(java.util.Locale.ROOT).replace("-", " "), handle));
    assertEquals(404, found(code, People.freshHandle()));
    given().get("/first-owner").then().statusCode(404);
    assertEquals(Optional.empty(), first.issue());
    assertEquals(
        "owner",
        db.createNativeQuery("select role from member where handle = :handle")
            .setParameter("handle", handle)
            .getSingleResult());
  }
}

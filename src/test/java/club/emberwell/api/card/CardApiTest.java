package club.emberwell.api.card;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import club.emberwell.access.People;
import club.emberwell.card.CardLimits;
import club.emberwell.card.Shop;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Base64;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.Test;

/** Job cards over JSON: for their owner, and by links that are made, listed and ended. */
@QuarkusTest
class CardApiTest {
  private static final String CARDS = "/api/v1/cards/";

  @Inject EntityManager db;

  private static String recipe(Shop shop) {
    return "/api/v1/recipes/" + shop.recipe();
  }

  @Test
  void aCardSaysAllThatIsNeededAtTheMachine() {
    Shop shop = Shop.open("interlocked");
    shop.owner()
        .asks()
        .get(recipe(shop) + "/card")
        .then()
        .statusCode(200)
        .body("title", equalTo("Coasters for the fair"))
        .body("version", equalTo(1))
        .body("newest", equalTo(1))
        .body(
            "checklist.standing",
            contains(
                "extraction",
                "extinguisher",
                "glasses",
                "housing",
                "watch",
                "material",
                null,
                null))
        .body("checklist.sentence", hasItems(Shop.OWN_LINES.toArray(String[]::new)))
        .body("machine", equalTo("Long tube"))
        .body("room", equalTo("North shed"))
        .body("material.value", equalTo("birch-plywood"))
        .body("thickness.value", equalTo(3))
        .body("supplier", equalTo("Dell Timber"))
        .body("lot", equalTo("B-17"))
        .body("settings.speed.value", equalTo(20))
        .body("settings.focusOffset.value", equalTo(-1))
        .body("fixture.name", equalTo("Coaster jig"))
        .body("fixture.kept", equalTo("Shelf two"))
        .body("fixture.positions", equalTo(6))
        // the fifth of two rows of three: second row, second column
        .body("fixture.position.row", equalTo(2))
        .body("fixture.position.column", equalTo(2))
        .body("fixture.position.x.value", equalTo(165))
        .body("fixture.position.y.value", equalTo(150))
        .body("steps", equalTo(Shop.STEPS))
        .body("cautions.id", not(empty()))
        .body("eyes.glasses.name", contains("Old pair", "Green pair"))
        .body("eyes.glasses.verdict", contains("not-covered", "covered"))
        .body("eyes.closing", containsString("ask a laser safety officer; local rules decide"));
  }

  @Test
  void theCautionsAreThoseOfTheRecipe() {
    Shop shop = Shop.open("open");
    List<String> said = shop.owner().asks().get(recipe(shop)).path("cautions.id");
    shop.owner()
        .asks()
        .get(recipe(shop) + "/card")
        .then()
        .body("cautions.id", equalTo(said))
        .body("checklist.sentence", hasItem(containsString("Open class 4 beam")));
  }

  @Test
  void whoHasALinkReadsThisCardAndNothingElseOfItsOwner() {
    Shop shop = Shop.open("closed");
    String secret = shop.link();
    Response card = given().get(CARDS + secret);
    card.then()
        .statusCode(200)
        .header("X-Robots-Tag", "noindex")
        .header("Cache-Control", "no-store")
        .body("title", equalTo("Coasters for the fair"))
        .body("steps", equalTo(Shop.STEPS));
    String said = card.asString();
    for (String own :
        List.of(
            shop.owner().handle(),
            shop.owner().id(),
            shop.recipe(),
            shop.machine(),
            shop.room(),
            shop.fixture(),
            "Nobody else",
            "@")) {
      assertFalse(said.contains(own), own);
    }
  }

  @Test
  void onlyTheHashOfASecretOf256BitsIsKept() {
    Shop shop = Shop.open("closed");
    String secret = shop.link();
    assertEquals(32, Base64.getUrlDecoder().decode(secret).length);
    byte[] kept =
        QuarkusTransaction.requiringNew()
            .call(
                () ->
                    (byte[])
                        db.createNativeQuery(
                                "select secret_hash from recipe_link where recipe_id = :id")
                            .setParameter("id", UUID.fromString(shop.recipe()))
                            .getSingleResult());
    assertArrayEquals(DigestUtils.sha256(secret), kept);
  }

  @Test
  void aLinkFollowsTheNewestAndShowsWhatWasPrintedSinceItWasMade() {
    Shop shop = Shop.open("closed");
    shop.faster("22 mm/s");
    String secret = shop.link();
    shop.faster("25 mm/s");
    given()
        .get(CARDS + secret)
        .then()
        .body("version", equalTo(3))
        .body("settings.speed.value", equalTo(25));
    given()
        .get(CARDS + secret + "?revision=2")
        .then()
        .body("version", equalTo(2))
        .body("newest", equalTo(3))
        .body("settings.speed.value", equalTo(22));
    for (int none : List.of(1, 0, -1, 4)) {
      given().get(CARDS + secret + "?revision=" + none).then().statusCode(404);
    }
    shop.owner()
        .asks()
        .get(recipe(shop) + "/card?revision=1")
        .then()
        .body("settings.speed.value", equalTo(20));
  }

  @Test
  void linksAreListedWithWhenTheyWereOpenedAndEnded() {
    Shop shop = Shop.open("closed");
    String first = shop.link();
    String second = shop.link();
    given().get(CARDS + second).then().statusCode(200);
    Response links = shop.owner().asks().get(recipe(shop) + "/links");
    links
        .then()
        .statusCode(200)
        .body("items", hasSize(2))
        .body("items[0].openedAt", notNullValue())
        .body("items[1].openedAt", nullValue())
        .body("items.works", contains(true, true));
    assertFalse(links.asString().contains(second), "a secret is shown once");
    String path = recipe(shop) + "/links/" + links.path("items[0].id");
    People.join().asks().delete(path).then().statusCode(404);
    shop.owner().asks().delete(path).then().statusCode(204);
    shop.owner().asks().delete(path).then().statusCode(204);
    shop.owner()
        .asks()
        .get(recipe(shop) + "/links")
        .then()
        .body("items[0].endedAt", notNullValue())
        .body("items.works", contains(false, true));
    given()
        .get(CARDS + second)
        .then()
        .statusCode(410)
        .body("type", equalTo("/problems/link-ended"))
        .body("detail", containsString("This link was ended"));
    given().get(CARDS + first).then().statusCode(200);
  }

  @Test
  void aLinkOpensNothingOnceItsRecipeIsWithdrawnAndIsUnknownOnceItsOwnerLeft() {
    Shop shop = Shop.open("closed");
    String secret = shop.link();
    shop.owner().asks().delete(recipe(shop)).then().statusCode(204);
    given().get(CARDS + secret).then().statusCode(410);
    shop.owner()
        .asks()
        .body(Map.of("password", People.PASSWORD, "choice", "keep"))
        .post("/api/v1/me/erasure")
        .then()
        .statusCode(204);
    given()
        .get(CARDS + secret)
        .then()
        .statusCode(404)
        .body("detail", containsString("no such card"));
  }

  @Test
  void aRecipeHasSoManyLinksThatWorkAndNoMore() {
    Shop shop = Shop.open("closed");
    for (int i = 0; i < CardLimits.OPEN; i++) {
      shop.link();
    }
    shop.owner()
        .asks()
        .post(recipe(shop) + "/links")
        .then()
        .statusCode(422)
        .body("detail", containsString("End one first"));
    String oldest = shop.owner().asks().get(recipe(shop) + "/links").path("items[-1].id");
    shop.owner().asks().delete(recipe(shop) + "/links/" + oldest).then().statusCode(204);
    shop.link();
  }

  @Test
  void faultsStandAtTheirFields() {
    Shop shop = Shop.open("closed");
    refused(shop, Map.of("position", 7), "/position", "positions 1 to 6");
    refused(shop, Map.of("fixture", UUID.randomUUID()), "/fixture", "no such fixture");
    refused(shop, Map.of("room", shop.fixture()), "/room", "no such room");
    refused(shop, Map.of("steps", List.of("one", "x".repeat(241))), "/steps/1", "Line 2: At most");
    refused(shop, Map.of("steps", Collections.nCopies(31, "on")), "/steps", "At most 30");
    Shop other = Shop.open("closed");
    refused(shop, Map.of("fixture", other.fixture()), "/fixture", "no such fixture");
    refused(shop, Map.of("room", other.room()), "/room", "no such room");
    Map<String, Object> lost = Shop.recipe(shop.machine());
    lost.put("position", 2);
    keep(shop, lost).then().statusCode(422).body("errors.pointer", contains("/fixture"));
  }

  private static Response keep(Shop shop, Map<String, Object> recipe) {
    return shop.owner()
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(recipe)
        .post("/api/v1/recipes");
  }

  private static void refused(Shop shop, Map<String, Object> other, String at, String why) {
    Map<String, Object> recipe = Shop.recipe(shop.machine());
    recipe.putAll(Map.of("fixture", shop.fixture(), "position", 1));
    recipe.putAll(other);
    keep(shop, recipe)
        .then()
        .statusCode(422)
        .body("errors.pointer", contains(at))
        .body("errors[0].detail", containsString(why));
  }

  @Test
  void aRoomHasLinesOfItsOwnThatStandAfterTheStandingOnes() {
    Shop shop = Shop.open("closed");
    String path = "/api/v1/rooms/" + shop.room();
    shop.owner().asks().get(path).then().body("lines", equalTo(Shop.OWN_LINES));
    Map<String, Object> room = new HashMap<>(Map.of("name", "North shed"));
    room.put("lines", List.of("Shoes on.", "y".repeat(121)));
    change(shop, path, room)
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/lines/1"))
        .body("errors[0].detail", matchesPattern("Line 2: At most 120 .*"));
    room.put("lines", List.of("Shoes on.", "  "));
    change(shop, path, room).then().statusCode(200).body("lines", contains("Shoes on."));
    shop.owner()
        .asks()
        .get(recipe(shop) + "/card")
        .then()
        .body("checklist", hasSize(7))
        .body("checklist[6].sentence", equalTo("Shoes on."));
    shop.owner().asks().delete(path).then().statusCode(204);
    shop.owner().asks().get(recipe(shop) + "/card").then().body("checklist", hasSize(6));
  }

  private static Response change(Shop shop, String path, Object room) {
    return shop.owner().asks().header("If-Match", "\"1\"").body(room).put(path);
  }

  @Test
  void anEarlierRevisionComesBackThoughItsFixtureShrank() {
    Shop shop = Shop.open("closed");
    shop.faster("25 mm/s");
    shop.owner()
        .asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("name", "Coaster jig", "rows", 1, "columns", 1))
        .put("/api/v1/fixtures/" + shop.fixture())
        .then()
        .statusCode(200);
    shop.owner()
        .asks()
        .header("If-Match", "\"2\"")
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(Map.of("revision", 1, "reason", "It was too fast."))
        .post(recipe(shop) + "/restorations")
        .then()
        .statusCode(200);
    shop.owner()
        .asks()
        .get(recipe(shop) + "/card")
        .then()
        .body("version", equalTo(3))
        .body("fixture.name", equalTo("Coaster jig"))
        .body("fixture.position", nullValue());
  }
}

package club.emberwell.web.photo;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.desk.Cast;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.launch.StatementCount;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.PhotoSize;
import club.emberwell.report.photo.PhotoWords;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.Pictures;
import club.emberwell.report.photo.ShownPhotos;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Photos once they are there: by the API, at the desk, within their space, in lists. */
@QuarkusTest
class PhotosAfterwardsTest {
  @Inject Photos photos;
  @Inject ShownPhotos shown;
  @Inject Cast cast;
  @Inject EntryLife life;
  @Inject Members members;
  @Inject ClubOptions club;
  @Inject SearchIndex index;

  private Person ada;
  private Actor actor;
  private UUID report;

  @BeforeEach
  void post() {
    ada = People.join();
    actor = members.byId(UUID.fromString(ada.id())).orElseThrow().actor();
    report = cast.report(actor, "slate", "300 mm/s", "Words").id();
  }

  private RequestSpecification upload(byte[] picture) {
    return given()
        .header("Authorization", "Bearer " + ada.token())
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .contentType("application/octet-stream")
        .body(picture);
  }

  private ValidatableResponse change(String url, int version, Object body) {
    return ada.asks().header("If-Match", "\"" + version + "\"").body(body).put(url).then();
  }

  private Photo add(UUID of, int width) {
    return photos.add(
        actor,
        of,
        new Photos.Added(
            null,
            Photos.drawn(new BufferedImage(width, 60, BufferedImage.TYPE_INT_RGB)),
            PhotoWords.NONE,
            null));
  }

  @Test
  void aProgramAddsChangesOrdersAndRemovesPhotosOfAllThreeKinds() throws IOException {
    UUID question = cast.question(actor, "Words of a question").id();
    String answer =
        ada.asks()
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .body(Map.of("text", "Go slower."))
            .post("/api/v1/questions/" + question + "/answers")
            .path("id");
    for (String of : List.of("reports/" + report, "questions/" + question, "answers/" + answer)) {
      String all = "/api/v1/" + of + "/photos";
      String url =
          upload(Pictures.of(1200, 900, "jpeg"))
              .queryParam("caption", "Seen from above")
              .post(all)
              .then()
              .statusCode(201)
              .body("caption", equalTo("Seen from above"))
              .body("alt", equalTo("Photo: Seen from above"))
              .body("altMade", equalTo(true))
              .body("sizes[0].width", equalTo(400))
              .extract()
              .path("url");
      upload(Pictures.of(30, 20, "png")).post(all).then().statusCode(201);
      change(url, 7, Map.of("caption", "x")).statusCode(412);
      change(url, 1, Map.of("alt", "x".repeat(301)))
          .statusCode(422)
          .body("errors[0].pointer", equalTo("/alt"));
      change(url, 1, Map.of("alt", "Grey stone", "position", 2))
          .statusCode(200)
          .body("caption", nullValue())
          .body("alt", equalTo("Grey stone"))
          .body("version", equalTo(2));
      given()
          .get(all)
          .then()
          .statusCode(200)
          .body("items[0].width", equalTo(30))
          .body("items[1].alt", equalTo("Grey stone"));
      given()
          .get("/api/v1/" + of)
          .then()
          .body("photos[1].alt", equalTo("Grey stone"))
          .body("photos[0].width", equalTo(30));
      given().get(url + "?size=middle").then().statusCode(200).contentType("image/jpeg");
      People.join().asks().delete(url).then().statusCode(403);
      ada.asks().delete(url).then().statusCode(204);
      given().get(url).then().statusCode(404);
    }
    given().get("/api/v1/questions/" + report + "/photos").then().statusCode(404);
  }

  @Test
  void aHeldPhotoIsSeenByItsAuthorAndModeratorsAloneAndComesBack() {
    UUID question = cast.question(actor, "Words of a question").id();
    Photo photo = add(question, 80);
    Actor moderator = cast.moderator();
    String file = photo.src(PhotoSize.THUMB);
    Browser owner = Browser.of(ada);
    String tag = given().get(file).header("ETag");
    given().header("If-None-Match", tag).get(file).then().statusCode(304);
    given().get(file).then().statusCode(200).header("Cache-Control", "private, no-cache");
    Browser.of(People.join()).get("/flags/photo/" + photo.id()).tidy();
    life.decide(
        moderator, new EntryRef(EntryKind.PHOTO, photo.id()), Decision.HOLD, "A face is on it.");
    // whoever kept it asks by its tag, and learns that it is gone (RFC 9111, section 4.3)
    given().header("If-None-Match", tag).get(file).then().statusCode(404);
    given().get(file).then().statusCode(404);
    given()
        .cookies(owner.cookies())
        .get(file)
        .then()
        .statusCode(200)
        .header("Cache-Control", "private, no-cache");
    assertEquals(1, shown.bytes(moderator, photo.id(), PhotoSize.LARGE)[0] & 1);
    assertEquals(0, owner.get("/ask/" + question).page().select(".photos img").size());
    life.decide(
        moderator, new EntryRef(EntryKind.PHOTO, photo.id()), Decision.RESTORE, "It is allowed.");
    given().get(file).then().statusCode(200);
    assertEquals(1, owner.get("/ask/" + question).page().select(".photos img").size());
    life.decide(moderator, new EntryRef(EntryKind.QUESTION, question), Decision.HOLD, "Wait.");
    given().get(file).then().statusCode(404);
  }

  @Test
  void whatModeratorsUndoBringsEarlierWordsBack() {
    Photo photo = add(report, 80);
    photos.say(actor, photo.id(), 1, new PhotoWords("Buy mugs here", null));
    life.bringBack(cast.moderator(), new EntryRef(EntryKind.PHOTO, photo.id()), 1, "No adverts.");
    assertEquals(null, shown.get(actor, photo.id()).caption());
  }

  @Test
  void aSizeThatWasNotMadeOnceIsMadeWhenItIsAskedFor() {
    Photo photo = add(report, 1600);
    cast.run(
        "update photo set size_bytes = size_bytes - length(middle), middle = null where id = '%s'"
            .formatted(photo.id()));
    byte[] made = shown.bytes(actor, photo.id(), PhotoSize.MIDDLE);
    assertTrue(made.length < shown.bytes(actor, photo.id(), PhotoSize.LARGE).length);
    assertEquals(
        made.length,
        cast.count("select length(middle) from photo where id = '%s'".formatted(photo.id())));
  }

  private static byte[] noise() throws IOException {
    BufferedImage picture = new BufferedImage(1200, 1200, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(7);
    for (int x = 0; x < picture.getWidth(); x++) {
      for (int y = 0; y < picture.getHeight(); y++) {
        picture.setRGB(x, y, random.nextInt());
      }
    }
    return Pictures.encode(picture, "jpeg");
  }

  @Test
  void anOwnerSaysHowMuchAMemberMayKeepAndAFullSpaceLosesNothing() throws IOException {
    Browser browser = Browser.of(ada).get("/reports/" + report + "/photos");
    browser.sendFiles("form[data-keep]", Map.of(), Map.of("photo1", noise()));
    assertEquals(303, browser.status());
    club.photoMegabytes(1);
    try {
      assertTrue(browser.get("/me").page().text().contains("of 1 MB"), browser.page().text());
      browser
          .get("/reports/" + report + "/photos")
          .sendFiles(
              "form[data-keep]",
              Map.of("photo1.caption", "Kept"),
              Map.of("photo1", Pictures.of(9, 9, "png")));
      assertEquals(422, browser.status());
      assertTrue(
          browser.tidy().page().select("#at-photo1 .field-error").text().contains("of 1 MB used"));
      assertEquals("Kept", browser.field("photo1.caption"));
      upload(Pictures.of(30, 20, "png"))
          .post("/api/v1/reports/" + report + "/photos")
          .then()
          .statusCode(422)
          .body("errors[0].detail", containsString("ask an owner"));
      assertThrows(EntryRefused.class, () -> add(report, 10));
      given().get("/api/v1/club").then().body("photoMegabytes", equalTo(1));
    } finally {
      club.photoMegabytes(500);
    }
    assertEquals(2, shown.of(actor, EntryKind.REPORT, add(report, 10).of().id()).size());
  }

  @Test
  void aListTakesAsManyStatementsHoweverManyPhotosItShows() {
    add(report, 80);
    index.awaitSeen(report);
    long one = statements();
    for (int i = 0; i < 3; i++) {
      UUID another = cast.report(actor, "slate", "30" + i + " mm/s", "Words " + i).id();
      add(another, 80);
      add(another, 90);
      index.awaitSeen(another);
    }
    assertEquals(one, statements());
  }

  /** Least of some, since others may change what is kept between requests. */
  private long statements() {
    String address = "/materials/slate/photos?source=co2";
    long least = Long.MAX_VALUE;
    for (int i = 0; i < 3; i++) {
      given().get("/api/v1/reports?member=" + ada.handle()).then().statusCode(200);
      least =
          Math.min(
              least,
              StatementCount.ofRequests(
                      () ->
                          given().contentType(ContentType.HTML).get(address).then().statusCode(200))
                  .size());
    }
    return least;
  }

  @Test
  void aMaterialHasAGalleryOfAllItsPhotos() {
    add(report, 80);
    add(report, 90);
    index.awaitSeen(report);
    given()
        .get("/api/v1/reports?member=" + ada.handle())
        .then()
        .body("hits[0].photoCount", equalTo(2));
    Browser browser = Browser.of(ada).get("/materials/slate/photos").tidy();
    assertTrue(browser.page().select(".gallery a[href='/reports/" + report + "']").size() >= 2);
    assertEquals(
        0,
        browser
            .get("/materials/slate/photos?process=cut")
            .tidy()
            .page()
            .select(".gallery li")
            .size());
    assertTrue(browser.get("/materials/slate").page().select("a[href$=/photos]").size() == 1);
    assertEquals(404, browser.get("/materials/unobtainium/photos").status());
  }
}

package club.emberwell.web.photo;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.report.photo.ParkedPhotos;
import club.emberwell.report.photo.Pictures;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jsoup.nodes.Element;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Photos chosen before posting, in a browser without scripts: none is lost, all are found. */
@QuarkusTest
class PhotosOnPagesTest {
  private static final String FORM = "form.post-form";

  @Inject ParkedPhotos parked;

  private Person ada;
  private Browser browser;

  @BeforeEach
  void atTheForm() {
    ada = People.join();
    browser = Browser.of(ada);
    browser
        .get("/bench/machines/new")
        .send(
            "main form",
            Map.of(
                "name", "Shed diode",
                "source", "diode",
                "wavelength", "455 nm",
                "ratedPower", "10 W",
                "motion", "gantry"));
    browser.get("/post").tidy();
  }

  private static Map<String, String> result(String speed) {
    Map<String, String> fields = new HashMap<>();
    fields.put("material", "slate");
    fields.put("process", "surface-engraving");
    fields.put("settings.power", "80 %");
    fields.put("settings.speed", speed);
    fields.put("settings.lineSpacing", "0.1 mm");
    fields.put("effect", "right");
    return fields;
  }

  private static Map<String, String> with(Map<String, String> fields, String... more) {
    Map<String, String> all = new HashMap<>(fields);
    for (int i = 0; i < more.length; i += 2) {
      all.put(more[i], more[i + 1]);
    }
    return all;
  }

  private Elements photos() {
    return browser.page().select(".photos img");
  }

  private String path() {
    return browser.location().replaceFirst("\\?.*", "");
  }

  @Test
  void aReportIsPostedWithPhotosTheirCaptionsAndWhatCanBeSeen() throws IOException {
    browser.sendFiles(
        FORM,
        with(
            result("20 mm/s"),
            "photo1.caption",
            "Naïve light, 2 × wiped",
            "photo1.alt",
            "White letters on grey stone"),
        Map.of(
            "photo1", Pictures.withExif(Pictures.of(2000, 1500, "jpeg"), 1),
            "photo2", Pictures.of(300, 200, "png")));
    assertEquals(303, browser.status());
    String report = path();
    browser.follow().tidy();
    Elements photos = photos();
    assertEquals(2, photos.size());
    Element first = photos.get(0);
    assertEquals("White letters on grey stone", first.attr("alt"));
    assertEquals("960", first.attr("width"));
    assertEquals("720", first.attr("height"));
    assertTrue(first.attr("srcset").matches(".* 400w, .* 960w, .* 1600w"), first.attr("srcset"));
    assertEquals("async", first.attr("decoding"));
    assertFalse(first.hasAttr("loading"), "the first one is in sight");
    assertTrue(browser.page().text().contains("Naïve light, 2 × wiped"));
    Element second = photos.get(1);
    assertEquals("Photo of slate", second.attr("alt"), "made of the work");
    assertEquals("lazy", second.attr("loading"));
    assertFalse(second.attr("srcset").contains(","), "too small for another size");
    assertFalse(browser.page().text().contains("edited"), "what was posted at once is no edit");

    var picture = given().get(first.attr("src")).then().statusCode(200);
    picture.header("Cache-Control", "private, no-cache");
    String tag = picture.extract().header("ETag");
    given().header("If-None-Match", tag).get(first.attr("src")).then().statusCode(304);

    browser.get("/?member=" + ada.handle()).tidy();
    assertEquals("White letters on grey stone", browser.page().select(".hit .thumb").attr("alt"));
    assertEquals(1, browser.get("/bench").tidy().page().select(".hit .thumb").size());
    assertEquals(
        1, browser.get("/members/" + ada.handle()).tidy().page().select(".hit .thumb").size());
    given()
        .get("/api/v1/reports?member=" + ada.handle())
        .then()
        .body("hits[0].photoCount", equalTo(2))
        .body("hits[0].photo.width", equalTo(1600))
        .body("hits[0].photo.alt", equalTo("White letters on grey stone"));
    given()
        .get("/api/v1" + report)
        .then()
        .body("photos[1].altMade", equalTo(true))
        .body("photos[0].sizes.size()", equalTo(3));
  }

  @Test
  void aRefusedFormKeepsItsPhotosForItsMemberAloneAndPostsThemOnce() throws IOException {
    byte[] picture = Pictures.of(800, 600, "jpeg");
    browser.sendFiles(
        FORM,
        with(result("fast"), "photo1.caption", "First try"),
        Map.of("photo1", picture, "photo2", "no picture".getBytes()));
    assertEquals(422, browser.status());
    browser.tidy();
    Elements kept = browser.page().select(".photo-parked img");
    assertEquals(1, kept.size());
    assertEquals("First try", browser.page().select(".photo-parked input[type=text]").val());
    assertTrue(browser.page().select("#at-photo2 .field-error").text().contains("JPEG"));
    String thumb = kept.attr("src");
    given().cookies(browser.cookies()).get(thumb).then().statusCode(200);
    given().cookies(Browser.of(People.join()).cookies()).get(thumb).then().statusCode(404);

    Map<String, String> form = with(result("20 mm/s"));
    browser.sendFiles(FORM, form, Map.of("photo1", picture));
    assertEquals(303, browser.status());
    browser.follow();
    assertEquals(1, photos().size(), "the same file is one photo");
    assertTrue(browser.page().text().contains("First try"));
    given().cookies(browser.cookies()).get(thumb).then().statusCode(404);
  }

  @Test
  void aParkedPhotoCanBeLeftOutAndIsForgottenAfterAWhile() throws IOException {
    browser.sendFiles(FORM, result("fast"), Map.of("photo1", Pictures.of(80, 60, "jpeg")));
    Element leave = browser.page().selectFirst(".photo-parked input[type=checkbox]");
    browser.sendFiles(FORM, with(result("fast"), leave.attr("name"), "true"), Map.of());
    assertEquals(422, browser.status());
    assertEquals(0, browser.page().select(".photo-parked img").size());
    browser.sendFiles(FORM, result("fast"), Map.of("photo3", Pictures.of(80, 60, "jpeg")));
    String thumb = browser.page().select(".photo-parked img").attr("src");
    parked.forgetOlder(Instant.now().minus(Duration.ofHours(1)));
    given().cookies(browser.cookies()).get(thumb).then().statusCode(200);
    parked.forgetOlder(Instant.now());
    given().cookies(browser.cookies()).get(thumb).then().statusCode(404);
  }

  @Test
  void captionsAndOrderChangeAfterwardsAndABadOneLosesNothing() throws IOException {
    browser.sendFiles(
        FORM,
        result("20 mm/s"),
        Map.of("photo1", Pictures.of(80, 60, "jpeg"), "photo2", Pictures.of(60, 80, "jpeg")));
    String report = path();
    browser.get(report + "/photos").tidy();
    Elements photos = browser.page().select(".album img");
    assertEquals("80", photos.get(0).attr("width"));
    browser.send("form[action$=first]", Map.of()).follow().tidy();
    assertEquals("60", browser.page().select(".album img").attr("width"), "now the first");
    String edit = browser.page().select("a[href$='/edit']").attr("href");
    browser.get(edit).tidy().send("form[action$=edit]", Map.of("caption", "x".repeat(201)));
    assertEquals(422, browser.status());
    assertEquals(201, browser.field("caption").length());
    assertTrue(browser.page().select("#at-caption .field-error").text().contains("200"));
    browser.send("form[action$=edit]", Map.of("caption", "Seen from above", "alt", "Grey"));
    assertEquals(303, browser.status());
    browser.get(report).tidy();
    assertEquals("Grey", photos().get(0).attr("alt"));
    assertTrue(browser.page().text().contains("Seen from above"));
    browser.get(report + "/photos").send("form[action$=remove]", Map.of()).follow();
    assertEquals(1, browser.page().select(".album img").size());
    browser.sendFiles("form[data-keep]", Map.of(), Map.of());
    assertEquals(422, browser.status());
    browser
        .tidy()
        .sendFiles("form[data-keep]", Map.of(), Map.of("photo1", Pictures.of(9, 9, "png")));
    assertEquals(303, browser.status());
    assertEquals(2, browser.get(report).page().select(".photos img").size());

    Browser other = Browser.of(People.join());
    assertEquals(404, other.get(report + "/photos").status());
    assertEquals(404, other.get(edit).status());
  }

  @Test
  void aQuestionAndAnAnswerHavePhotosToo() throws IOException {
    browser.get("/ask/new").tidy();
    Map<String, String> words =
        Map.of("title", "Why is my slate so pale?", "text", "It should be white, see the photo.");
    browser.sendFiles(
        "#question", words, Map.of("step", "look"), Map.of("photo1", Pictures.of(80, 60, "jpeg")));
    assertEquals(200, browser.status());
    assertEquals(1, browser.tidy().page().select(".photo-parked img").size());
    browser.sendFiles("#question", words, Map.of("step", "post"), Map.of());
    assertEquals(303, browser.status());
    String question = path();
    browser.follow().tidy();
    assertEquals("Photo with the question “Why is my slate so pale?”", photos().get(0).attr("alt"));

    Browser helper = Browser.of(People.join());
    helper
        .get(question)
        .tidy()
        .sendFiles(
            "form[action$=answers]",
            Map.of("text", "", "photo1.alt", "A pale and a white stone"),
            Map.of("photo1", Pictures.of(90, 60, "jpeg")));
    assertEquals(422, helper.status());
    helper.tidy().sendFiles("form[action$=answers]", Map.of("text", "Go slower."), Map.of());
    assertEquals(303, helper.status());
    browser.get(question).tidy();
    assertEquals("A pale and a white stone", photos().get(1).attr("alt"));
    given()
        .get(question.replace("/ask/", "/api/v1/questions/"))
        .then()
        .body("photos.size()", equalTo(1))
        .body("answers.items[0].photos[0].alt", equalTo("A pale and a white stone"));

    String photo = photos().get(1).attr("src").replaceFirst("/photos/([^/]+)/.*", "$1");
    assertTrue(browser.get("/photos/" + photo).location().startsWith(question + "?answer="));
    assertEquals(200, browser.get("/flags/photo/" + photo).status());
    helper.get(question.replace("/ask/", "/talk/") + "/photos");
    assertEquals(404, helper.status(), "another's question");
    given().get("/photos/" + photo + "/huge.jpg").then().statusCode(404);
    given().get("/photos/" + photo + "/thumb.jpg").then().header("ETag", containsString(photo));
  }
}

package club.emberwell.api.report;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertFalse;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.report.photo.Pictures;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class PhotoApiTest {
  private Person ada;
  private String report;

  @BeforeEach
  void post() {
    ada = People.join();
    report = Bodies.post(ada, Bodies.report());
  }

  private static Response upload(Person person, String id, byte[] body) {
    return given()
        .header("Authorization", "Bearer " + person.token())
        .header("Idempotency-Key", Bodies.key())
        .contentType("application/octet-stream")
        .body(body)
        .post("/api/v1/reports/" + id + "/photos");
  }

  @Test
  void aPictureIsServedFromOurOwnBytesInASandbox() throws Exception {
    byte[] sent = Pictures.withExif(Pictures.of(800, 400, "jpeg"), 1);
    String url = upload(ada, report, sent).then().statusCode(201).extract().path("url");
    byte[] served =
        given()
            .get(url)
            .then()
            .statusCode(200)
            .contentType("image/jpeg")
            .header("X-Content-Type-Options", "nosniff")
            .header("Content-Security-Policy", containsString("sandbox"))
            .extract()
            .asByteArray();
    assertFalse(new String(served, StandardCharsets.ISO_8859_1).contains("Exif"));
    given().get(url + "?size=thumb").then().statusCode(200).contentType("image/jpeg");
    given()
        .get("/api/v1/reports/" + report)
        .then()
        .header("ETag", startsWith("\"2-"))
        .body("photos", hasSize(1))
        .body("photos[0].width", equalTo(800));
  }

  @Test
  void aFormPartIsTakenToo() throws Exception {
    given()
        .header("Authorization", "Bearer " + ada.token())
        .header("Idempotency-Key", Bodies.key())
        .multiPart("photo", "../../evil.svg", Pictures.of(30, 30, "png"), "image/svg+xml")
        .post("/api/v1/reports/" + report + "/photos")
        .then()
        .statusCode(201);
  }

  @Test
  void whatIsNoPictureIsRefusedAndNothingIsKept() throws Exception {
    byte[] svg = "<svg xmlns='http://www.w3.org/2000/svg'/>".getBytes(StandardCharsets.UTF_8);
    upload(ada, report, svg).then().statusCode(415);
    upload(ada, report, Pictures.pngHeader(65_535, 65_535)).then().statusCode(422);
    upload(ada, report, new byte[10 * 1024 * 1024 + 1]).then().statusCode(413);
    given().get("/api/v1/reports/" + report).then().body("photos", hasSize(0));
  }

  @Test
  void aReportHasAFewPicturesAndOnlyItsAuthorAddsThem() throws Exception {
    byte[] picture = Pictures.of(10, 10, "png");
    upload(People.join(), report, picture).then().statusCode(403);
    for (int i = 0; i < 6; i++) {
      upload(ada, report, picture).then().statusCode(201);
    }
    upload(ada, report, picture)
        .then()
        .statusCode(422)
        .body("errors[0].pointer", equalTo("/photo"));
  }

  @Test
  void picturesGoWithTheirReportAndOneByOne() throws Exception {
    String url = upload(ada, report, Pictures.of(10, 10, "png")).then().extract().path("url");
    String second = upload(ada, report, Pictures.of(20, 20, "png")).then().extract().path("url");
    ada.asks().delete(second).then().statusCode(204);
    given().get(second).then().statusCode(404);
    ada.asks().delete("/api/v1/reports/" + report).then().statusCode(204);
    given().get(url).then().statusCode(410);
    given().header("Authorization", "Bearer " + ada.token()).get(url).then().statusCode(200);
  }
}

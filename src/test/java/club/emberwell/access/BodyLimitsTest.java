package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How much may be sent where. */
@QuarkusTest
class BodyLimitsTest {
  private static final int MB = 1 << 20;

  @Inject LongestBody longest;

  @ParameterizedTest
  @CsvSource({
    "/post, multipart/form-data, 32",
    "/reports/1/repeat, multipart/form-data, 32",
    "/reports/1/photos, multipart/form-data, 32",
    "/talk/1/photos, multipart/form-data, 32",
    "/ask/new, multipart/form-data, 32",
    "/ask/1/answers, multipart/form-data, 32",
    "/grids/1/photo, multipart/form-data, 11",
    "/api/v1/reports/1/photos, image/jpeg, 11",
    "/api/v1/questions/1/photos, image/webp, 11",
    "/api/v1/answers/1/photos, multipart/form-data, 11",
    "/api/v1/grids/1/photo, application/octet-stream, 11",
    "/api/v1/lots/1/photo, image/jpeg, 11",
    "/fixtures/1/photo, multipart/form-data, 11",
    "/sign-in, application/x-www-form-urlencoded, 1",
    "/grids/1/photo/corners, application/x-www-form-urlencoded, 1",
    "/reports/1/photos/2, , 1",
  })
  void photosMayBeLongAndOtherFormsNot(String path, String type, int megabytes) {
    assertEquals((long) megabytes * MB, longest.of(path, type));
  }

  @ParameterizedTest
  @CsvSource({
    "/api/v1/reports, application/json",
    "/api/v1/grids/1/photo, application/json; charset=utf-8",
    "/api/v1/reports/1/photos, application/json",
    "/api/v1/members, text/plain"
  })
  void whatProgramsSendIsShort(String path, String type) {
    assertEquals(256 * 1024, longest.of(path, type));
  }

  /** The answer is there before a byte of the body is sent (RFC 9110, section 15.5.14). */
  @Test
  void aPageRefusesWhatIsTooLongBeforeItComes() throws IOException {
    try (Socket socket = new Socket("localhost", RestAssured.port)) {
      socket.setSoTimeout(30_000);
      String head =
          "POST /sign-in HTTP/1.1\r\n"
              + "Host: localhost\r\n"
              + "Content-Type: application/x-www-form-urlencoded\r\n"
              + "Content-Length: 2000000\r\n\r\n";
      socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
      InputStream in = socket.getInputStream();
      StringBuilder answer = new StringBuilder();
      byte[] some = new byte[4096];
      while (!answer.toString().contains("</html>")) {
        int read = in.read(some);
        assertTrue(read > 0, "the answer ends early: " + answer);
        answer.append(new String(some, 0, read, StandardCharsets.UTF_8));
      }
      assertTrue(answer.toString().startsWith("HTTP/1.1 413 "), answer.toString());
      assertTrue(answer.toString().contains("At most 1 MB can be sent here."), answer.toString());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "/sign-in, application/x-www-form-urlencoded, 3, can be sent here",
    "/post, multipart/form-data; boundary=x, 34, At most 32 MB"
  })
  void aPageRefusesWhatDoesNotSayItsLengthWhileItComes(
      String path, String type, int megabytes, String sentence) throws Exception {
    Person ada = People.join();
    HttpResponse<String> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(
                        URI.create(RestAssured.baseURI + ":" + RestAssured.port + path))
                    .header("Content-Type", type)
                    .header("Cookie", cookies(ada))
                    .POST(BodyPublishers.ofInputStream(() -> new Zeros(megabytes)))
                    .build(),
                BodyHandlers.ofString());
    assertEquals(413, answer.statusCode(), answer.body());
    assertTrue(answer.body().contains(sentence), answer.body());
  }

  private static String cookies(Person person) {
    return Browser.of(person).cookies().entrySet().stream()
        .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
        .collect(Collectors.joining("; "));
  }

  /** A part of a form that never ends. */
  private static final class Zeros extends InputStream {
    private final byte[] head =
        "--x\r\nContent-Disposition: form-data; name=\"photo1\"; filename=\"a\"\r\n\r\n"
            .getBytes(StandardCharsets.US_ASCII);

    private final long length;
    private long at;

    Zeros(int megabytes) {
      length = (long) megabytes * MB;
    }

    @Override
    public int read() {
      return at >= length ? -1 : at < head.length ? head[(int) at++] : (int) (at++ & 1);
    }
  }

  @Test
  void aProgramIsToldHowLongAPictureMayBe() {
    given()
        .header("Authorization", "Bearer " + People.join().token())
        .header("Idempotency-Key", "x")
        .contentType("image/jpeg")
        .body(new byte[12 * MB])
        .post("/api/v1/reports/00000000-0000-4000-8000-000000000000/photos")
        .then()
        .statusCode(413)
        .contentType("application/problem+json")
        .body("detail", containsString("At most 11 MB"));
  }
}

package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.member.club.ClubOptions;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What comes in other shapes than browsers and well-behaved programs send. */
@QuarkusTest
class RawRequestsTest {
  private static final Pattern STATUS = Pattern.compile("HTTP/1\\.1 (\\d{3})");
  private static final int PATIENCE = 20_000;

  @TestHTTPResource URI root;
  @Inject ClubOptions club;

  /** The statuses of all answers on one connection, which the last request ends. */
  private List<Integer> statuses(String bytes) throws IOException {
    try (Socket socket = new Socket(root.getHost(), root.getPort())) {
      socket.setSoTimeout(PATIENCE);
      socket.getOutputStream().write(bytes.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8));
      String answers =
          new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
      return STATUS
          .matcher(answers)
          .results()
          .map(found -> Integer.valueOf(found.group(1)))
          .toList();
    }
  }

  /**
   * RFC 9112, section 6.3: of both, the chunks count. Were the length believed, the second request
   * would begin in the middle of a chunk; were the chunks, it is one of its own.
   */
  @Test
  void whereAMessageEndsIsReadFromItsChunksThoughItSaysALengthToo() throws IOException {
    List<Integer> answered =
        statuses(
            """
            POST /api/v1/tokens HTTP/1.1
            Host: localhost
            Content-Type: application/json
            Content-Length: 4
            Transfer-Encoding: chunked

            2
            {}
            0

            GET /api/v1/openapi.json HTTP/1.1
            Host: localhost
            Connection: close

            """);
    // or the connection ends after the first, as that section allows
    assertTrue(
        List.of(List.of(422, 200), List.of(422), List.of(400)).contains(answered),
        answered::toString);
  }

  /** RFC 9112, section 6.3: lengths that differ, and one that is no number. */
  @ParameterizedTest
  @ValueSource(strings = {"4\nContent-Length: 2", "4, 2", "-2", "+2", "0x2"})
  void aLengthThatIsNoneIsRefused(String length) throws IOException {
    List<Integer> answered =
        statuses(
            """
            POST /api/v1/tokens HTTP/1.1
            Host: localhost
            Content-Type: application/json
            Connection: close
            Content-Length: %s

            {}\
            """
                .formatted(length));
    assertEquals(List.of(400), answered);
  }

  /** RFC 9110, section 9.3.8: an echo would hand scripts what they cannot read. */
  @Test
  void traceEchoesNothing() throws IOException {
    assertEquals(
        List.of(405),
        statuses(
            """
            TRACE / HTTP/1.1
            Host: localhost
            Cookie: emberwell=secret
            Connection: close

            """));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/.git/config",
        "/.git/HEAD",
        "/WEB-INF/",
        "/META-INF/",
        "/assets/",
        "/assets",
        "/application.properties",
        "/templates/",
        "/db/migration/",
        "/q/dev-ui",
        "/q/dev"
      })
  void neitherSourcesNorListsOfFilesNorToolsAreServed(String path) {
    given().get(path).then().statusCode(404).body(not(containsString("[core]")));
  }

  /**
   * V15.3.7: what stands in the address is no field of a form, and a second field counts nothing.
   */
  @Test
  void aFieldCountsOnlyWhereItBelongsAndOnce() {
    Person person = People.join();
    var page = given().get("/sign-in");
    String token = Jsoup.parse(page.asString()).selectFirst("main [name=form-token]").val();
    given()
        .redirects()
        .follow(false)
        .cookies(page.getCookies())
        .queryParam("handle", person.handle())
        .queryParam("password", People.PASSWORD)
        .formParam("form-token", token)
        .post("/sign-in")
        .then()
        .statusCode(not(303));
    given()
        .redirects()
        .follow(false)
        .cookies(page.getCookies())
        .formParam("form-token", token)
        .formParam("handle", "somebody-else", person.handle())
        .formParam("password", People.PASSWORD)
        .post("/sign-in")
        .then()
        .statusCode(not(303));
  }

  /** V4.1.1: text says in which letters it is written. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/sign-in",
        "/sign-up",
        "/no-such-page",
        "/robots.txt",
        "/sitemap.xml",
        "/feeds/results.atom",
        "/feeds/questions.atom",
        "/search.csv",
        "/sw.js",
        "/q/metrics"
      })
  void textSaysThatItIsUtf8(String path) {
    club.readingPublic(true);
    String type = given().get(path).then().statusCode(is(oneOf(200, 404))).extract().contentType();
    assertTrue(type.toLowerCase(Locale.ROOT).contains("charset=utf-8"), type);
  }
}

package club.emberwell.web.outside;

import static club.emberwell.web.outside.Posted.report;
import static club.emberwell.web.outside.Posted.word;
import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.launch.StatementCount;
import club.emberwell.talk.Matching;
import club.emberwell.web.frame.Browser;
import com.rometools.rome.feed.synd.SyndEntry;
import com.rometools.rome.feed.synd.SyndFeed;
import com.rometools.rome.io.SyndFeedInput;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

/** Feeds say in words what is new. */
@QuarkusTest
class FeedsTest {
  @Inject Matching matching;

  private static SyndFeed feed(Response answer) throws Exception {
    assertEquals(200, answer.statusCode(), answer.asString());
    assertTrue(answer.contentType().startsWith("application/atom+xml"), answer.contentType());
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    AtomRules.check(
        factory
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(answer.asByteArray()))
            .getDocumentElement());
    return new SyndFeedInput().build(new StringReader(answer.asString()));
  }

  private static Document html(SyndEntry entry) {
    assertEquals("html", entry.getContents().get(0).getType());
    return Jsoup.parse(entry.getContents().get(0).getValue());
  }

  private static void isTheResult(SyndEntry entry, String id) {
    assertEquals(
        "Stainless steel / Powder coat: coating removal, 30 W fibre 1064 nm, galvo"
            + " (right, quality 4 of 5)",
        entry.getTitle());
    assertEquals("urn:uuid:" + id, entry.getUri());
    assertTrue(entry.getLink().endsWith("/reports/" + id), entry.getLink());
    String text = html(entry).text();
    for (String said :
        List.of(
            "Power: 40 %",
            "Average power (nominal): 12 W",
            "Speed: 800 mm/s",
            "Line spacing: 0.05 mm",
            "Passes: 2",
            "Dose (nominal): 0.6 J/mm²",
            "Cautions")) {
      assertTrue(text.contains(said), said + " in " + text);
    }
  }

  @Test
  void aSearchIsAFeedOfItsResultsInWords() throws Exception {
    String word = word();
    Person ada = People.join();
    String path = "/feeds/results.atom?q=" + word;
    assertTrue(feed(given().get(path)).getEntries().isEmpty());
    String id = report(ada, word);
    Response answer = given().get(path + "&sort=quality&size=5");
    SyndFeed found = feed(answer);
    assertTrue(found.getTitle().startsWith("New results: “" + word), found.getTitle());
    assertFalse(found.getCopyright().isBlank());
    assertEquals(1, found.getEntries().size());
    isTheResult(found.getEntries().get(0), id);
    SyndEntry entry = found.getEntries().get(0);
    assertEquals(ada.handle(), entry.getAuthor());
    assertTrue(
        entry.getLinks().stream().anyMatch(link -> "license".equals(link.getRel())), "RFC 4946");
    given().header("If-None-Match", answer.header("ETag")).get(path).then().statusCode(304);
    given()
        .header("If-Modified-Since", answer.header("Last-Modified"))
        .get(path)
        .then()
        .statusCode(304);
    given().get("/feeds/results.atom?source=maser").then().statusCode(422);
  }

  @Test
  void aFeedTakesTheSameStatementsHoweverMuchIsInIt() throws Exception {
    String word = word();
    Person ada = People.join();
    String path = "/feeds/results.atom?q=" + word;
    report(ada, word);
    List<String> one = statements(path);
    for (int i = 0; i < 3; i++) {
      report(ada, word);
    }
    List<String> four = statements(path);
    assertEquals(4, feed(given().get(path)).getEntries().size());
    assertEquals(one.size(), four.size(), one + " " + four);
    assertTrue(four.size() <= 4, four.toString());
  }

  /** Of the second round: what is read once for all is read by then. */
  private static List<String> statements(String path) {
    given().get(path);
    return StatementCount.ofRequests(() -> given().get(path).then().statusCode(200));
  }

  @Test
  void newQuestionsAreAFeedWithTheirTextsAndNothingThatXmlCannotHold() throws Exception {
    Person ada = People.join();
    String title = "A & B <c> \uD83D\uDD25 " + word();
    String first =
        ada.makes("questions", Map.of("title", title, "text", "It is *pale* & <b>thin</b>."));
    String second = ada.makes("questions", Map.of("title", "Later " + word(), "text", "x"));
    People.join().makes("questions/" + first + "/answers", Map.of("text", "Slow down."));
    List<SyndEntry> entries = feed(given().get("/feeds/questions.atom")).getEntries();
    assertEquals("urn:uuid:" + second, entries.get(0).getUri(), "an answer is no new question");
    SyndEntry entry = entries.get(1);
    assertEquals(title, entry.getTitle());
    assertEquals("pale", html(entry).select("em").text());
    assertTrue(html(entry).select("b").isEmpty(), "escaped");
    assertTrue(html(entry).text().contains("1 answer so far"), html(entry).text());
    byte[] odd = new Xml().text("t", "a\u0001b\uFFFE\uD83D\uDD25").bytes();
    assertTrue(new String(odd, "UTF-8").endsWith("<t>ab\uD83D\uDD25</t>"));
  }

  @Test
  void aWatchsFeedSaysTheSameOfItsFinds() throws Exception {
    String word = word();
    Browser ada = Browser.of(People.join());
    ada.get("/?q=" + word).send("form.watch-form", Map.of());
    String watch = ada.follow().page().select("main a.button[href^=/watches/]").attr("href");
    ada.get(watch).send("form[action$=/feed]", Map.of());
    String path = ada.follow().page().select("a.feed-address").attr("href");
    String id = report(People.join(), word);
    matching.catchUp();
    List<SyndEntry> entries = feed(given().get(path)).getEntries();
    assertEquals(1, entries.size());
    isTheResult(entries.get(0), id);
  }
}

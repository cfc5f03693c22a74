package club.emberwell.web.talk;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.talk.Matching;
import club.emberwell.web.frame.Browser;
import club.emberwell.web.outside.AtomRules;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

@QuarkusTest
class WatchPagesTest {
  @Inject Matching matching;

  private static Browser watching(Person person, String search) {
    Browser browser = Browser.of(person);
    browser.get("/?" + search).tidy().send("form.watch-form", Map.of());
    assertEquals("/watches?done=added", browser.location());
    return browser.follow().tidy();
  }

  /** Posts a notice and answers its id. */
  private static String notice(Person person, String title) {
    return post(person, "/api/v1/notices", Map.of("title", title, "text", "x"));
  }

  private static String post(Person person, String path, Map<String, ?> body) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(path)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static String word() {
    return "w" + Long.toString(System.nanoTime(), 36);
  }

  /** The inbox once something is unread. */
  private Browser found(Browser browser) {
    matching.catchUp();
    browser.get("/inbox");
    assertFalse(browser.page().select(".badge").isEmpty(), "nothing was found");
    return browser.tidy();
  }

  @Test
  void thePageSaysWhatMailContainsAndWhereAnswersAndCommentsCome() {
    String said = "answers to your questions and comments on your reports come into your inbox.";
    Person ada = People.join();
    assertTrue(Browser.of(ada).get("/watches").tidy().page().text().contains(said));
    assertTrue(watching(ada, "q=" + word()).page().text().contains(said));
    Map<String, String> asked = Map.of("title", "Which lens for slate?", "text", "I have two.");
    String question = post(ada, "/api/v1/questions", asked);
    String answer = "/api/v1/questions/" + question + "/answers";
    post(People.join(), answer, Map.of("text", "The long one."));
    Browser inbox = found(Browser.of(ada));
    assertTrue(inbox.page().text().contains("Which lens for slate?"), inbox.page().text());
  }

  @Test
  void aSearchIsWatchedFromItsPageAndItsFindsComeIntoTheInbox() {
    String word = word();
    Browser ada = watching(People.join(), "q=" + word + "&sort=newest&page=2");
    assertEquals("“" + word + "”", ada.page().select("main h2").text());
    assertEquals("/?q=" + word, ada.page().select("main h2 a").attr("href"));
    assertNull(ada.page().selectFirst(".badge"), "nothing yet");
    Person ben = People.join();
    String first = notice(ben, "News of <b>" + word);
    notice(ben, "More of " + word);
    found(ada);
    assertEquals(2, ada.page().select("li .unread").size());
    assertTrue(ada.page().select(".badge").text().startsWith("2"));
    assertFalse(ada.page().select("a[href=/notices/" + first + "]").isEmpty());
    assertTrue(ada.page().select("main b").isEmpty(), "escaped");
    ada.send("form[action$=/read]:not([action=/inbox/read])", Map.of());
    assertEquals("/inbox", ada.location());
    assertEquals(1, ada.follow().page().select("li .unread").size());
    ada.send("form[action=/inbox/read]", Map.of());
    Document page = ada.follow().tidy().page();
    assertTrue(page.select(".badge, .unread").isEmpty());
    assertEquals(2, page.select(".hit").size());
  }

  @Test
  void whatWasOpenedIsNoNewsAnyMore() {
    String word = word();
    Person person = People.join();
    Browser ada = watching(person, "q=" + word);
    notice(People.join(), "News of " + word);
    found(ada);
    String path = ada.page().select("main .hit a").attr("href");
    for (String purpose : List.of("prefetch", "prefetch;prerender")) {
      with(ada).header("Sec-Purpose", purpose).get(path).then().statusCode(200);
    }
    with(ada).head(path).then().statusCode(200);
    Browser.of(People.join()).get(path);
    assertEquals(1, ada.get("/inbox").page().select("li .unread").size());
    assertNull(ada.get(path).tidy().page().selectFirst(".badge"), "at once");
    assertTrue(ada.get("/inbox").page().select("li .unread").isEmpty());
    assertEquals(1, ada.page().select(".hit").size());
  }

  private static RequestSpecification with(Browser browser) {
    return given().cookie("emberwell", browser.cookie("emberwell"));
  }

  @Test
  void openingAQuestionReadsTheAnswersOnItsPage() {
    Person person = People.join();
    Browser ada = Browser.of(person);
    Map<String, ?> question = Map.of("title", "Why is it pale?", "text", "x");
    String path = "/api/v1/questions/" + post(person, "/api/v1/questions", question);
    post(People.join(), path + "/answers", Map.of("text", "Slow down."));
    found(ada);
    String link = ada.page().select("main .hit a").attr("href");
    assertTrue(link.matches("/ask/[^?]+\\?answer=([^#]+)#answer-\\1"), link);
    assertNull(ada.get(link.replaceFirst("#.*", "")).tidy().page().selectFirst(".badge"));
  }

  @Test
  void aWatchIsRenamedGetsMailAndEnds() {
    Person person = People.join();
    Browser ada = watching(person, "material=slate");
    String change = ada.page().select("main a[href^=/watches/]").attr("href");
    Browser second = Browser.of(person).get(change);
    ada.get(change).tidy().send("main form", Map.of("label", "Roofs", "mail", "yes"));
    ada.follow().tidy();
    assertEquals("Roofs", ada.page().select("main h2").text());
    assertTrue(ada.page().select("main li").text().contains("by e-mail too"));
    second.send("main form", Map.of("label", "Stones"));
    assertEquals(412, second.status());
    assertEquals("Stones", second.tidy().field("label"));
    second.send("main form", Map.of("label", "x".repeat(81)));
    assertEquals(422, second.status());
    assertFalse(second.tidy().page().select("#at-label .field-error").isEmpty());
    assertEquals(404, Browser.of(People.join()).get(change).status());
    ada.send("form[action$=/end]", Map.of());
    assertTrue(ada.follow().page().select("main").text().contains("No watches yet."));
  }

  @Test
  void aSearchThatCannotBeReadIsToldOf() {
    Browser ada = Browser.of(People.join());
    ada.get("/").send("form.watch-form", Map.of("query", "source=maser"));
    assertEquals(422, ada.status());
    assertFalse(ada.tidy().page().select("#error-summary").isEmpty());
  }

  @Test
  void theFeedIsAtomAndDiesWithItsAddress() throws Exception {
    String word = word();
    Browser ada = watching(People.join(), "q=" + word);
    String watch = ada.page().select("main a.button[href^=/watches/]").attr("href");
    ada.get(watch).tidy().send("form[action$=/feed]", Map.of());
    assertEquals(watch + "?done=feed", ada.location());
    String path = ada.follow().tidy().page().select("a.feed-address").attr("href");
    String id = notice(People.join(), "A & B <c> " + word);
    found(ada);
    Response answer = given().get(path);
    assertEquals(200, answer.statusCode());
    assertTrue(answer.contentType().startsWith("application/atom+xml"), answer.contentType());
    Element feed = parse(answer.asByteArray());
    AtomRules.check(feed);
    Element entry = AtomRules.only(feed, "entry");
    assertEquals("A & B <c> " + word, AtomRules.only(entry, "title").getTextContent());
    assertEquals("urn:uuid:" + id, AtomRules.only(entry, "id").getTextContent());
    assertTrue(AtomRules.only(entry, "link").getAttribute("href").endsWith("/notices/" + id));
    assertTrue(AtomRules.only(entry, "link").getAttribute("href").startsWith("http"));
    given().header("If-None-Match", answer.header("ETag")).get(path).then().statusCode(304);

    ada.get(watch).send("form[action$=/feed]", Map.of());
    String next = ada.follow().page().select("a.feed-address").attr("href");
    assertNotEquals(path, next);
    given().get(path).then().statusCode(404);
    given().get(next).then().statusCode(200);
    ada.get(watch).send("form[action$=/feed/stop]", Map.of());
    given().get(next).then().statusCode(404);
    given().get("/feeds/nonsense.atom").then().statusCode(404);
  }

  private static Element parse(byte[] xml) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(xml)).getDocumentElement();
  }

  @Test
  void strangersHaveNoInboxAndNoWatches() {
    Browser stranger = new Browser();
    assertEquals(401, stranger.get("/inbox").status());
    assertEquals(401, stranger.get("/watches").status());
    stranger.get("/").tidy();
    assertNull(stranger.page().selectFirst("form.watch-form"));
    assertNull(stranger.page().selectFirst(".inbox-link"));
  }
}

package club.emberwell.web.outside;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.access.PublicUrl;
import club.emberwell.launch.StatementCount;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.talk.Matching;
import club.emberwell.web.frame.Browser;
import com.rometools.rome.feed.synd.SyndEntry;
import com.rometools.rome.feed.synd.SyndFeed;
import com.rometools.rome.io.SyndFeedInput;
import crawlercommons.robots.SimpleRobotRules;
import crawlercommons.robots.SimpleRobotRulesParser;
import crawlercommons.sitemaps.AbstractSiteMap;
import crawlercommons.sitemaps.SiteMap;
import crawlercommons.sitemaps.SiteMapIndex;
import crawlercommons.sitemaps.SiteMapParser;
import crawlercommons.sitemaps.SiteMapURL;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.net.URI;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

@QuarkusTest
class OutsideTest {
  @Inject ClubOptions club;
  @Inject PublicUrl url;
  @Inject Matching matching;

  private static String word() {
    return "w" + Long.toString(System.nanoTime(), 36);
  }

  private static String post(Person by, String path, Map<String, ?> body) {
    return by.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/" + path)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static String report(Person by, String word) {
    Map<String, Object> report = new HashMap<>();
    report.put(
        "laser",
        Map.of(
            "source",
            "fibre",
            "wavelength",
            "1064 nm",
            "ratedPower",
            "30 W",
            "motion",
            "galvo",
            "regime",
            "ns"));
    report.put("material", "stainless steel");
    report.put("coating", "powder coat");
    report.put("process", "coating-removal");
    report.put(
        "settings",
        Map.of("power", "40 %", "speed", "800 mm/s", "lineSpacing", "0.05 mm", "passes", 2));
    report.put("effect", "right");
    report.put("quality", 4);
    report.put("notes", "Words of " + word);
    return post(by, "reports", report);
  }

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
        post(ada, "questions", Map.of("title", title, "text", "It is *pale* & <b>thin</b>."));
    String second = post(ada, "questions", Map.of("title", "Later " + word(), "text", "x"));
    post(People.join(), "questions/" + first + "/answers", Map.of("text", "Slow down."));
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

  private static Document head(String path) {
    return Jsoup.parse(given().urlEncodingEnabled(false).get(path).then().extract().asString());
  }

  private static String said(Document page, String name) {
    return page.select("head meta[name=%1$s], head meta[property=%1$s]".formatted(name))
        .attr("content");
  }

  private static boolean listed(Document page) {
    return page.select("meta[name=robots]").isEmpty();
  }

  @Test
  void eachPublicPageSaysWhatItHoldsBeforeItIsOpened() {
    Person ada = People.join();
    String report = report(ada, word());
    String question =
        post(ada, "questions", Map.of("title", "Why \"pale\"?", "text", "Is it *slow*?\n\nYes."));
    Document page = head("/reports/" + report + "?saved=yes");
    String title = "Stainless steel / Powder coat: coating removal, 30 W fibre 1064 nm, galvo";
    assertTrue(page.title().startsWith(title), page.title());
    assertTrue(page.title().endsWith(" · " + club.clubName()), page.title());
    assertTrue(said(page, "og:title").startsWith(title), said(page, "og:title"));
    String description = said(page, "description");
    assertTrue(description.contains("40 % (12 W) · 800 mm/s · 0.05 mm"), description);
    assertTrue(description.contains("Result: right, quality 4 of 5."), description);
    assertEquals(description, said(page, "og:description"));
    assertEquals(url.of("/reports/" + report), page.select("link[rel=canonical]").attr("href"));
    assertEquals(url.of("/reports/" + report), said(page, "og:url"));
    assertEquals(url.of("/preview/reports/" + report + ".png"), said(page, "og:image"));
    assertTrue(listed(page));
    page = head("/ask/" + question);
    assertTrue(said(page, "og:title").startsWith("Why \"pale\"?"), page.title());
    assertTrue(said(page, "description").endsWith("asks: Is it slow? Yes."), page.html());
    page = head("/?material=stainless-steel&sort=newest");
    assertEquals(
        url.of("/?material=stainless-steel"), page.select("link[rel=canonical]").attr("href"));
    assertTrue(said(page, "description").contains("Stainless steel"), page.html());
    assertEquals(
        "/feeds/results.atom?material=stainless-steel",
        page.select("link[type=application/atom+xml]").get(0).attr("href"));
    assertTrue(listed(page));
    assertTrue(page.select("a.facet-value:not([rel=nofollow])").isEmpty());
    assertTrue(said(head("/materials/pvc"), "description").startsWith("We do not share settings"));
    for (String path : List.of("/", "/ask", "/notices", "/materials", "/dose", "/data", "/about")) {
      assertTrue(listed(head(path)), path);
      assertFalse(said(head(path), "description").isEmpty(), path);
    }
    for (String path :
        List.of(
            "/?material=slate&source=diode",
            "/?q=halo",
            "/?page=1",
            "/ask?q=halo",
            "/sign-in",
            "/no-such-page",
            "/reports/" + report + "/history")) {
      assertFalse(listed(head(path)), path);
    }
    Browser mine = Browser.of(ada).get("/reports/" + report);
    assertFalse(listed(mine.page()), "a page of somebody who is signed in");
  }

  @Test
  void searchEnginesAreToldWhereNotToLookAndWhatThereIs() throws Exception {
    Person ada = People.join();
    String id = report(ada, word());
    SimpleRobotRules rules = robots();
    for (String path :
        List.of(
            "/",
            "/?material=slate",
            "/range?coating=powder-coat",
            "/reports/" + id,
            "/materials/slate",
            "/ask",
            "/members/ada",
            "/sitemap.xml",
            "/assets/base.css")) {
      assertTrue(rules.isAllowed(url.of(path)), path);
    }
    for (String path :
        List.of(
            "/?q=slate",
            "/?source=diode",
            "/?material=slate&source=diode",
            "/range?material=slate&coating=x",
            "/desk",
            "/me",
            "/me/rights",
            "/post",
            "/ask/new",
            "/ask?page=2",
            "/sign-in?to=/",
            "/reports/" + id + "/repeat",
            "/api/v1/reports",
            "/dose?power=1")) {
      assertFalse(rules.isAllowed(url.of(path)), path);
    }
    assertEquals(List.of(url.of("/sitemap.xml")), rules.getSitemaps());
    assertTrue(rules.isAllowed(url.of("/members/me")));
    Map<String, SiteMapURL> there = mapped();
    assertTrue(there.containsKey(url.of("/materials/slate")));
    assertTrue(there.get(url.of("/reports/" + id)).getLastModified() != null);
    ada.asks().delete("/api/v1/reports/" + id);
    assertFalse(mapped().containsKey(url.of("/reports/" + id)), "withdrawn");
    given().get("/sitemap-99999.xml").then().statusCode(404);
  }

  private SimpleRobotRules robots() {
    byte[] text = given().get("/robots.txt").asByteArray();
    return new SimpleRobotRulesParser()
        .parseContent(url.of("/robots.txt"), text, "text/plain", Set.of("anybot"));
  }

  private Map<String, SiteMapURL> mapped() throws Exception {
    Map<String, SiteMapURL> there = new HashMap<>();
    Collection<AbstractSiteMap> maps = ((SiteMapIndex) map(url.of("/sitemap.xml"))).getSitemaps();
    for (AbstractSiteMap part : maps) {
      SiteMap map = (SiteMap) map(part.getUrl().toString());
      map.getSiteMapUrls().forEach(one -> there.put(one.getUrl().toString(), one));
    }
    return there;
  }

  private AbstractSiteMap map(String address) throws Exception {
    byte[] xml = given().get(URI.create(address).getPath()).asByteArray();
    return new SiteMapParser(true).parseSiteMap("text/xml", xml, URI.create(address).toURL());
  }

  @Test
  void aClubThatReadsAmongItselfTellsNothing() {
    club.readingPublic(false);
    try {
      given().get("/feeds/results.atom").then().statusCode(401);
      given().get("/feeds/questions.atom").then().statusCode(401);
      given().get("/sitemap.xml").then().statusCode(401);
      assertFalse(robots().isAllowed(url.of("/")));
      Document page = head("/about");
      assertFalse(listed(page));
      assertTrue(page.select("meta[property], link[rel=canonical], link[rel=alternate]").isEmpty());
    } finally {
      club.readingPublic(true);
    }
  }

  @Test
  void whatProgramsLookForEverywhereIsThere() {
    given().get("/favicon.ico").then().statusCode(200).contentType("image/x-icon");
    given()
        .get("/manifest.webmanifest")
        .then()
        .body("id", equalTo("/"))
        .body("scope", equalTo("/"))
        .body("lang", equalTo("en"))
        .body("name", equalTo(club.clubName()))
        .body("start_url", equalTo("/"));
    Browser stranger = new Browser().get("/.well-known/change-password");
    assertEquals("/sign-in?to=/me%23password-heading", stranger.location());
    Browser ada = Browser.of(People.join()).get("/.well-known/change-password");
    assertEquals(303, ada.status());
    assertEquals("/me#password-heading", ada.location());
    assertTrue(ada.get("/me").page().getElementById("password-heading") != null);
    given().get("/.well-known/security.txt").then().statusCode(404);
    assertNull(given().get("/.well-known/no-such-thing").header("Location"));
  }
}

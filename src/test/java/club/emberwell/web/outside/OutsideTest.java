package club.emberwell.web.outside;

import static club.emberwell.web.outside.Posted.report;
import static club.emberwell.web.outside.Posted.word;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.access.PublicUrl;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.frame.Browser;
import crawlercommons.robots.SimpleRobotRules;
import crawlercommons.robots.SimpleRobotRulesParser;
import crawlercommons.sitemaps.AbstractSiteMap;
import crawlercommons.sitemaps.SiteMap;
import crawlercommons.sitemaps.SiteMapIndex;
import crawlercommons.sitemaps.SiteMapParser;
import crawlercommons.sitemaps.SiteMapURL;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URI;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

@QuarkusTest
class OutsideTest {
  @Inject ClubOptions club;
  @Inject PublicUrl url;

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
        ada.makes("questions", Map.of("title", "Why \"pale\"?", "text", "Is it *slow*?\n\nYes."));
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

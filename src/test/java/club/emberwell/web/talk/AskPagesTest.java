package club.emberwell.web.talk;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class AskPagesTest {
  private static final String FORM = "form.talk-form";
  private static final Map<String, String> POST = Map.of("step", "post");

  private static Map<String, String> question() {
    Map<String, String> fields = new HashMap<>();
    fields.put("title", "Pale marks on slate");
    fields.put("text", "They fade after **oil**.");
    fields.put("ties.material", "slate");
    fields.put("ties.controllerVersion", "4.2");
    return fields;
  }

  private static String word() {
    return "w" + Long.toString(System.nanoTime(), 36);
  }

  /** Asks and answers the path of the question. */
  private static String ask(Browser browser, Map<String, String> fields) {
    browser.get("/ask/new").send(FORM, fields, Map.of("step", "look"));
    assertEquals(200, browser.status());
    browser.tidy().send(FORM, Map.of(), POST);
    assertEquals(303, browser.status());
    String path = browser.location().replace("?saved=yes", "");
    browser.get(path).tidy();
    return path;
  }

  private static String id(String path) {
    return path.substring("/ask/".length());
  }

  @Test
  void aQuestionIsPreviewedPostedAnsweredAndSettled() {
    Browser ada = Browser.of(People.join());
    ada.get("/ask/new").tidy().send(FORM, question(), Map.of("step", "look"));
    assertEquals(200, ada.status());
    ada.tidy();
    assertEquals("oil", ada.page().select("[aria-labelledby=known] .member-text strong").text());
    assertEquals("They fade after **oil**.", ada.field("text"));
    ada.send(FORM, Map.of(), POST);
    String path = ada.location().replace("?saved=yes", "");
    assertEquals("Saved.", ada.follow().tidy().page().select(".notice-strip").text());

    Person person = People.join();
    Browser ben = Browser.of(person);
    ben.get(path).send(FORM, Map.of("text", "Slow down."));
    assertEquals(303, ben.status());
    String first = ben.location().substring(ben.location().indexOf('#') + 1);
    ben.get(path).send(FORM, Map.of("text", "Paint it first."));
    String second = ben.location().substring(ben.location().indexOf('#') + 1);
    ben.get(path).tidy();
    assertTrue(ben.page().select("form[action$=accept]").isEmpty(), "only who asked accepts");

    ada.get(path).tidy();
    assertEquals("2 answers", ada.page().select("#answers").text());
    ada.send("#" + second + " form[action$=accept]", Map.of("answer", second.substring(7)));
    assertEquals(path + "#" + second, ada.location());
    ada.get(path).tidy();
    assertEquals(second, ada.page().select("article.card").first().id(), "accepted first");
    assertNotNull(ada.page().selectFirst("#" + second + ".accepted"));
    assertNull(ada.page().selectFirst("#" + first + ".accepted"));
    ada.send("#" + second + " form[action$=accept]", Map.of("answer", ""));
    assertNull(ada.get(path).page().selectFirst(".accepted"));
  }

  @Test
  void whatIsKnownIsShownBeforePosting() {
    Browser ada = Browser.of(People.join());
    String word = word();
    Map<String, String> fields = question();
    fields.put("title", "Halos of " + word + " on slate");
    String path = ask(ada, fields);
    fields.put("title", "Why does slate get a " + word + " halo");
    ada.get("/ask/new").send(FORM, fields, Map.of("step", "look"));
    Document page = ada.tidy().page();
    assertFalse(page.select("[aria-labelledby=known] a[href=" + path + "]").isEmpty());
    assertFalse(page.select("[aria-labelledby=known] a[href=/?material=slate]").isEmpty());
    String post = "[aria-labelledby=known] button[form=question][name=step][value=post]";
    assertNotNull(page.selectFirst(post), "posted from here, without scrolling past the form");
    assertNotNull(page.selectFirst("form#question"));
  }

  @Test
  void whatIsKnownIsShownWhileATitleIsTyped() {
    Browser ada = Browser.of(People.join());
    String word = word();
    Map<String, String> fields = question();
    fields.put("title", "Halos of " + word + " on slate");
    String path = ask(ada, fields);
    Document typed = ada.get("/ask/similar?title=a+" + word + "+halo+round+slate+let").page();
    assertFalse(typed.select("a[href=" + path + "]").isEmpty());
    assertFalse(typed.select("a[href=/?material=slate]").isEmpty());
    Document named = ada.get("/ask/similar?title=so&ties.material=Schiefer").page();
    assertFalse(named.select("a[href=/?material=slate]").isEmpty());
    assertEquals("", ada.get("/ask/similar?title=&ties.material=nothing+known").page().text());
    assertEquals(200, ada.get("/ask/similar?title=" + "x+".repeat(2000)).status());
    assertEquals(200, ada.get("/ask/similar").status());
  }

  @ParameterizedTest
  @CsvSource({"look", "post"})
  void sendingTwiceAsksOnce(String ignored) {
    Browser ada = Browser.of(People.join());
    ada.get("/ask/new").send(FORM, question(), Map.of("step", "look"));
    String id = ada.page().select("input[name=id]").val();
    ada.send(FORM, Map.of("id", id), POST);
    String first = ada.location();
    ada.get("/ask/new").send(FORM, with(question(), "id", id), POST);
    assertEquals(first, ada.location());
  }

  private static Map<String, String> with(Map<String, String> fields, String name, String value) {
    fields.put(name, value);
    return fields;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "title|''",
        "title|short",
        "text|''",
        "ties.material|unobtainium",
        "ties.coating|moonlight",
        "ties.source|maser",
        "ties.process|levitating"
      })
  void aFieldAtFaultIsToldBesideItAndNothingTypedIsLost(String field, String value) {
    Browser ada = Browser.of(People.join());
    Map<String, String> fields = with(question(), field, value);
    for (String step : new String[] {"look", "post"}) {
      ada.get("/ask/new").send(FORM, fields, Map.of("step", step));
      assertEquals(422, ada.status());
      Document page = ada.tidy().page();
      assertTrue(page.title().startsWith("Error:"), page.title());
      assertFalse(page.select("[id=at-" + field + "] .field-error").isEmpty(), field);
      assertNotNull(page.selectFirst("#error-summary a[href=#" + field + "]"));
      fields.forEach(
          (name, typed) -> {
            if (!name.equals("ties.source") && !name.equals("ties.process")) {
              assertEquals(typed, ada.field(name), name + " was lost");
            }
          });
    }
  }

  @Test
  void anAnswerAtFaultKeepsWhatWasTyped() {
    Browser ada = Browser.of(People.join());
    String path = ask(ada, question());
    String vast = "x".repeat(10_001);
    ada.send(FORM, Map.of("text", vast));
    assertEquals(422, ada.status());
    assertEquals(vast, ada.tidy().field("text"));
    assertFalse(ada.page().select("#at-text .field-error").isEmpty());
    assertEquals("No answer yet", ada.get(path).page().select("#answers").text());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "[click](javascript:alert(1))",
        "![p](https://elsewhere.example/p.png)",
        "<a href=\"&#106;avascript:alert(1)\">x</a>",
        "{#if true}{cdi:page.handle}{/if}",
        "</textarea><script>alert(1)</script>",
        "`<b>` **<svg onload=alert(1)>**"
      })
  void membersTextsRunNothing(String text) {
    Browser ada = Browser.of(People.join());
    Map<String, String> fields = with(question(), "text", text);
    fields.put("title", "Title " + text);
    ada.get("/ask/new").send(FORM, fields, Map.of("step", "look"));
    harmless(ada);
    assertEquals(text, ada.field("text"));
    ada.send(FORM, Map.of(), POST);
    String path = ada.location().replace("?saved=yes", "");
    harmless(ada.get(path));
    assertEquals("Title " + text, ada.page().select("h1").text());
    harmless(ada.get("/ask"));
    harmless(ada.get("/talk/" + id(path) + "/edit"));
    assertEquals(text, ada.field("text"));
    harmless(ada.get("/talk/" + id(path) + "/history"));
    harmless(ada.get("/talk/" + id(path) + "/withdraw"));
  }

  private static void harmless(Browser browser) {
    assertEquals(200, browser.status());
    Document page = browser.tidy().page();
    // pictures that others show of the same work stand beside the question, in the answer alone
    page.select(".answer img[src^=/photos/]").remove();
    assertTrue(page.select("main script, main img, main svg[onload]").isEmpty());
    for (Element link : page.select("a")) {
      String href = link.attr("href").toLowerCase(java.util.Locale.ROOT);
      assertFalse(href.contains("javascript:"), href);
    }
  }

  @Test
  void aQuestionIsFoundAmongTheNewestTheUnansweredAndByItsWords() {
    Browser ada = Browser.of(People.join());
    String word = word();
    String path = ask(ada, with(question(), "title", "About the " + word));
    String link = ".hits a[href=" + path + "]";
    assertNotNull(ada.get("/ask").tidy().page().selectFirst(link));
    assertNotNull(ada.get("/ask?show=unanswered").tidy().page().selectFirst(link));
    assertNotNull(ada.get("/ask?q=" + word).tidy().page().selectFirst(link));
    assertEquals(word, ada.field("q"));
    ada.get(path).send(FORM, Map.of("text", "Like this."));
    assertNull(ada.get("/ask?show=unanswered").page().selectFirst(link));
    ada.get("/ask?q=nothing-has-" + word() + "%26x").tidy();
    String begin = ada.page().select("main a.button").attr("href");
    assertTrue(begin.contains("%26x"), begin);
    assertEquals(200, ada.get("/ask?page=900").tidy().status());
    assertEquals(200, ada.get("/ask?page=nonsense").tidy().status());
  }

  @Test
  void wordsAndUnansweredStayTogetherInTheFormTheTabsAndTheList() {
    Browser ada = Browser.of(People.join());
    String word = word();
    String path = ask(ada, with(question(), "title", "Who knows " + word));
    String told = ask(ada, with(question(), "title", "Who told " + word));
    ada.get(told).send(FORM, Map.of("text", "I do."));
    Document page = ada.get("/ask?q=" + word + "&show=unanswered").tidy().page();
    assertEquals(List.of(path), page.select(".hits h3 a").eachAttr("href"));
    assertEquals(word, ada.field("q"));
    assertEquals("unanswered", page.select("form.find-form [name=show]").attr("value"));
    assertEquals(
        List.of("/ask?q=" + word, "/ask?q=" + word + "&show=unanswered", "/notices?q=" + word),
        page.select("main .chip-place").eachAttr("href"));
    assertEquals("Unanswered", page.select("main [aria-current=page]").text());
    Document all = ada.get("/ask?q=" + word).page();
    assertEquals(Set.of(path, told), Set.copyOf(all.select(".hits h3 a").eachAttr("href")));
    assertEquals("All questions", all.select("main [aria-current=page]").text());
    assertTrue(all.select("form.find-form [name=show]").isEmpty());
    Document none = ada.get("/ask?q=" + word() + "%26x&show=unanswered").tidy().page();
    String everything = none.select("main .card a").attr("href");
    assertTrue(everything.contains("%26x") && !everything.contains("show"), everything);
    assertEquals(
        "Latest activity", ada.get("/ask").page().select("main [aria-current=page]").text());
  }

  @Test
  void anAnswerPastTheFirstPageIsReachedByItsLink() {
    Browser ada = Browser.of(People.join());
    String path = ask(ada, question());
    String first = "";
    for (int i = 0; i <= 30; i++) {
      ada.get(path).send(FORM, Map.of("text", "Answer " + i));
      first = first.isEmpty() ? ada.location() : first;
    }
    String[] link = ada.location().split("#");
    assertTrue(link[0].startsWith(path + "?answer="), link[0]);
    assertNull(ada.get(path).page().getElementById(link[1]));
    assertNotNull(ada.get(link[0]).tidy().page().getElementById(link[1]));
    assertEquals(path, ada.page().select("[rel=prev]").attr("href"));
    link = first.split("#");
    assertNotNull(ada.get(link[0]).tidy().page().getElementById(link[1]));
    assertEquals(200, ada.get(path + "?answer=nonsense").tidy().status());
  }

  @Test
  void aQuestionBegunFromASearchHasItsWordsInPlace() {
    Browser ada = Browser.of(People.join());
    assertEquals("slate", ada.get("/ask/new?about=slate").tidy().field("ties.material"));
    assertEquals("odd halo", ada.get("/ask/new?about=odd+halo").field("title"));
    ada.get("/ask/new?report=nonsense").tidy();
    assertTrue(ada.page().select("[name=ties.report]").isEmpty());
  }

  @Test
  void anEditThatWasOvertakenShowsBoth() {
    Person person = People.join();
    Browser ada = Browser.of(person);
    String path = ask(ada, question());
    String edit = "/talk/" + id(path) + "/edit";
    Browser second = Browser.of(person).get(edit);
    ada.get(edit).tidy();
    assertEquals("Slate", ada.field("ties.material"));
    ada.send(FORM, Map.of("text", "They fade **at once**.", "reason", "clearer"));
    assertEquals(path, ada.location());
    second.send(FORM, Map.of("text", "They fade in the sun."));
    assertEquals(412, second.status());
    Document page = second.tidy().page();
    assertEquals("They fade in the sun.", second.field("text"));
    assertEquals("They fade **at once**.", page.select("del").text());
    assertEquals("They fade in the sun.", page.select("ins").text());
    assertEquals("at once", page.select("[aria-labelledby=meanwhile] .member-text strong").text());
    second.send(FORM, Map.of());
    assertEquals(303, second.status());
    second.get("/talk/" + id(path) + "/history").tidy();
    assertEquals(3, second.page().select("main ol > li").size());
    assertTrue(second.page().text().contains("Reason: clearer"));
  }

  @Test
  void anEditAtFaultKeepsEverything() {
    Browser ada = Browser.of(People.join());
    String path = ask(ada, question());
    ada.get("/talk/" + id(path) + "/edit")
        .send(FORM, Map.of("title", "x", "text", "Other words.", "reason", "why not"));
    assertEquals(422, ada.status());
    assertEquals("x", ada.tidy().field("title"));
    assertEquals("Other words.", ada.field("text"));
    assertEquals("why not", ada.field("reason"));
    assertFalse(ada.page().select("#at-title .field-error").isEmpty());
  }

  @Test
  void whatIsWithdrawnIsGoneForOthersAndMarkedForItsAuthor() {
    Browser ada = Browser.of(People.join());
    String path = ask(ada, question());
    ada.get("/talk/" + id(path) + "/withdraw").tidy().send("main form", Map.of());
    assertEquals(path, ada.location());
    assertTrue(ada.follow().tidy().page().select(".box-warn").text().contains("withdrawn"));
    assertTrue(ada.page().select("a[href$=/edit]").isEmpty());
    given().get(path).then().statusCode(410);
    given().get("/talk/" + id(path) + "/history").then().statusCode(410);
  }

  @Test
  void othersChangeNothingAndStrangersOnlyRead() {
    Browser ada = Browser.of(People.join());
    String path = ask(ada, question());
    Browser ben = Browser.of(People.join());
    ben.get(path).tidy();
    assertTrue(ben.page().select("main a[href$=/edit], main a[href$=/withdraw]").isEmpty());
    ben.get("/talk/" + id(path) + "/edit").send(FORM, Map.of("text", "Mine now."));
    assertEquals(403, ben.status());
    Browser stranger = new Browser().get(path).tidy();
    assertEquals(200, stranger.status());
    assertNull(stranger.page().selectFirst(FORM));
    assertEquals(401, new Browser().get("/ask/new").status());
    assertEquals(404, stranger.get("/ask/" + UUID.randomUUID()).status());
    assertEquals(404, stranger.get("/ask/nonsense").status());
    assertEquals(404, stranger.get("/notices/" + id(path)).status());
  }
}

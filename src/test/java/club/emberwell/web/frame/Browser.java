package club.emberwell.web.frame;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import io.restassured.builder.MultiPartSpecBuilder;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** What somebody does in a browser without scripts: follow links, fill in forms, send them. */
public final class Browser {
  private final Map<String, String> cookies = new HashMap<>();
  private Response last;

  /** A browser in which this person is signed in. */
  public static Browser of(Person person) {
    Browser browser = new Browser();
    browser.get("/sign-in");
    browser.send("main form", Map.of("handle", person.handle(), "password", People.PASSWORD));
    assertEquals(303, browser.status());
    return browser;
  }

  public Browser get(String path) {
    last = given().cookies(cookies).redirects().follow(false).urlEncodingEnabled(false).get(path);
    cookies.putAll(last.cookies());
    return this;
  }

  /** The same by a link, as browsers do that say where it stands. */
  public Browser led(String from, String path) {
    last =
        given()
            .cookies(cookies)
            .header("Sec-Fetch-Site", from)
            .redirects()
            .follow(false)
            .urlEncodingEnabled(false)
            .get(path);
    cookies.putAll(last.cookies());
    return this;
  }

  public Browser follow() {
    return get(location());
  }

  /** Sends the post form a selector finds, with these fields beside what stands in it. */
  public Browser send(String selector, Map<String, String> filled) {
    return send(selector, filled, Map.of());
  }

  /** The same with a press on a named button. */
  public Browser send(String selector, Map<String, String> filled, Map<String, String> pressed) {
    return send(form(selector), null, filled, pressed);
  }

  /** The same with a press on the button that sends it elsewhere. */
  public Browser sendTo(String action, String selector, Map<String, String> filled) {
    Element form = form(selector);
    boolean own = form.attr("action").equals(action);
    assertTrue(own || !form.select("[formaction=" + action + "]").isEmpty(), action);
    return send(form, action, filled, Map.of());
  }

  private Element form(String selector) {
    Element form = page().selectFirst(selector);
    assertTrue(form != null, "no such form: " + selector);
    return form;
  }

  private Browser send(
      Element form, String action, Map<String, String> filled, Map<String, String> pressed) {
    var request = given().cookies(cookies).redirects().follow(false);
    for (Element input : form.select("input, select, textarea")) {
      String name = input.attr("name");
      if (!filled.containsKey(name)) {
        String value = value(input);
        if (value != null) {
          request.formParam(name, value);
        }
      }
    }
    filled.forEach(request::formParam);
    pressed.forEach(request::formParam);
    last = request.post(action == null ? form.attr("action") : action);
    cookies.putAll(last.cookies());
    return this;
  }

  /** The same where files were chosen, so that it goes as several parts. */
  public Browser sendFiles(String selector, Map<String, String> filled, Map<String, byte[]> files) {
    return sendFiles(selector, filled, Map.of(), files);
  }

  public Browser sendFiles(
      String selector,
      Map<String, String> filled,
      Map<String, String> pressed,
      Map<String, byte[]> files) {
    Element form = page().selectFirst(selector);
    assertTrue(form != null, "no such form: " + selector);
    assertEquals("multipart/form-data", form.attr("enctype"));
    Map<String, String> fields = new HashMap<>();
    for (Element input : form.select("input, select, textarea")) {
      String value = value(input);
      if (value != null && !input.attr("type").equals("file")) {
        fields.put(input.attr("name"), value);
      }
    }
    fields.putAll(filled);
    fields.putAll(pressed);
    var request = given().cookies(cookies).redirects().follow(false);
    fields.forEach(
        (name, value) ->
            request.multiPart(
                new MultiPartSpecBuilder(value)
                    .controlName(name)
                    .charset(StandardCharsets.UTF_8)
                    .build()));
    files.forEach(
        (name, bytes) ->
            request.multiPart(name.replaceFirst(":.*", ""), "IMG_1.JPG", bytes, "image/jpeg"));
    last = request.post(form.attr("action"));
    cookies.putAll(last.cookies());
    return this;
  }

  private static String value(Element input) {
    if (input.normalName().equals("select")) {
      Element chosen = input.selectFirst("option[selected]");
      Element first = input.selectFirst("option");
      return (chosen == null ? first : chosen).attr("value");
    }
    boolean choice = input.attr("type").equals("radio") || input.attr("type").equals("checkbox");
    return choice && !input.hasAttr("checked") ? null : input.val();
  }

  public int status() {
    return last.statusCode();
  }

  /** A header of the last answer, as it came. */
  public String header(String name) {
    return last.header(name);
  }

  /** What this browser would send back under that name. */
  public String cookie(String name) {
    return cookies.get(name);
  }

  public String location() {
    return last.header("Location").replaceFirst("^https?://[^/]+", "");
  }

  /** What was answered, as it came. */
  public String text() {
    return last.asString();
  }

  public Document page() {
    return Jsoup.parse(last.asString());
  }

  /** What this browser sends back with each request. */
  public Map<String, String> cookies() {
    return Map.copyOf(cookies);
  }

  /** What a field holds now. */
  public String field(String name) {
    Element field = page().getElementById(name);
    return field.normalName().equals("select")
        ? field.select("option[selected]").attr("value")
        : field.val();
  }

  /** Holds for every page: no inline script or style, one heading, labels for all fields. */
  public Browser tidy() {
    Document page = page();
    assertEquals(1, page.select("h1").size());
    assertTrue(page.select("style, [style]").isEmpty(), "inline style");
    assertTrue(page.select("script:not([src])").isEmpty(), "inline script");
    for (Element each : page.getAllElements()) {
      each.attributes().forEach(a -> assertTrue(!a.getKey().startsWith("on"), a.getKey()));
    }
    for (Element input : page.select("main input:not([type=hidden]), main select, main textarea")) {
      boolean labelled =
          input.closest("label") != null
              || !page.select("label[for=\"" + input.id() + "\"]").isEmpty();
      assertTrue(labelled, "no label for " + input.attr("name"));
    }
    List<String> ids = page.getAllElements().eachAttr("id");
    assertEquals(ids.stream().distinct().count(), ids.size(), "an id stands twice: " + ids);
    return this;
  }
}

package club.emberwell.frozen;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.exchange.bench.Zips;
import club.emberwell.report.photo.Pictures;
import club.emberwell.web.frame.Browser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

/** People who do what scripts say, and what they see. */
final class LittleClub {
  private static final MathContext DIGITS = new MathContext(12);
  private static final ObjectMapper ROUNDED =
      new ObjectMapper()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(SerializationFeature.INDENT_OUTPUT);
  private static final ObjectMapper SORTED =
      ROUNDED.copy().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

  private final Saved saved = new Saved();
  private final Examples examples = new Examples(saved);
  private final List<String> stuck = new ArrayList<>();
  private final Map<String, Person> people = new HashMap<>();
  private final Map<String, Browser> browsers = new HashMap<>();

  /** Signs somebody up under this name. */
  void joins(String handle, Runnable thenRole) {
    Map<String, String> secret = Map.of("handle", handle, "password", People.PASSWORD);
    String id = posted("/api/v1/members", secret).path("id");
    thenRole.run();
    Map<String, String> labelled = new TreeMap<>(secret);
    labelled.put("label", "a script");
    Response token = posted("/api/v1/tokens", labelled);
    saved.put("id-of-" + handle, id);
    saved.put("token-id-of-" + handle, token.path("id"));
    people.put(handle, new Person(handle, id, token.path("token"), token.path("id")));
  }

  private Response posted(String path, Map<String, String> body) {
    Response answer = People.json(body).post(path);
    answer.then().statusCode(201);
    examples.saw("POST", path, new TreeMap<>(body), false, answer);
    return answer;
  }

  /** Follows a script of calls; what is seen by name of its file. */
  Map<String, String> calls(String script, String folder) {
    Map<String, String> seen = new LinkedHashMap<>();
    for (Step raw : Step.read(script)) {
      Step step = raw.with(saved::filled);
      Response answer = call(step);
      if (step.has("save") && answer.statusCode() < 400) {
        Object made = answer.path(step.has("from") ? step.text("from") : "id");
        if (made == null) {
          stuck.add(raw + " answers nothing to save\n" + told(answer));
        } else {
          String dropped = step.has("last") ? ".*/" : "^https?://[^/]+";
          saved.put(step.text("save"), made.toString().replaceFirst(dropped, ""));
        }
      }
      keep(seen, folder, raw, answer.statusCode(), told(answer));
    }
    return seen;
  }

  private Response call(Step step) {
    RequestSpecification request =
        RestAssured.given().redirects().follow(false).urlEncodingEnabled(false);
    if (step.has("by")) {
      request.header("Authorization", "Bearer " + people.get(step.text("by")).token());
    }
    if (step.verb().equals("POST")) {
      request.header("Idempotency-Key", UUID.randomUUID().toString());
    }
    if (step.has("match")) {
      request.header("If-Match", "\"" + step.text("match") + "\"");
    }
    if (step.has("picture")) {
      request.contentType("image/png").body(picture());
    } else if (step.has("copy")) {
      request.contentType("application/zip").body(copy(step));
    } else if (step.has("body")) {
      request.contentType(ContentType.JSON).body(step.keys().get("body"));
    } else if (step.has("raw")) {
      request.contentType(ContentType.JSON).body(step.text("raw"));
    }
    String path = step.target().startsWith("/") ? step.target() : "/api/v1/" + step.target();
    Response answer = request.request(step.verb(), path);
    examples.saw(step.verb(), path, step.keys().get("body"), step.has("example"), answer);
    return answer;
  }

  /** A copy of a bench with these lists. */
  private static byte[] copy(Step step) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    ((Map<?, ?>) step.keys().get("copy"))
        .forEach(
            (name, text) ->
                files.put((String) name, (text + "\n").getBytes(StandardCharsets.UTF_8)));
    try {
      return Zips.copy(files);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] picture() {
    try {
      return Pictures.of(60, 40, "png");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String told(Response answer) {
    StringBuilder told = new StringBuilder();
    for (String name : new String[] {"Content-Type", "ETag", "Location", "WWW-Authenticate"}) {
      String value = answer.header(name);
      // what follows the version in a tag is a hash of ids and times
      String same =
          value == null
              ? null
              : value
                  .replaceFirst("(^\"\\d{1,7})-[^\"]+", "$1-<hash>")
                  .replaceFirst("^W/\".*\"", "W/\"<tag>\"");
      told.append(same == null ? "" : name + ": " + same + "\n");
    }
    String body = answer.asString();
    boolean json = String.valueOf(answer.contentType()).contains("json");
    return told + (json && !body.isEmpty() ? sorted(body) : body) + "\n";
  }

  /** JSON with sorted keys; numbers without the last digits, in which processors may differ. */
  static String sorted(String json) {
    return written(SORTED, json);
  }

  /** JSON in its own order; numbers without the last digits. */
  static String rounded(String json) {
    return written(ROUNDED, json);
  }

  private static String written(ObjectMapper mapper, String json) {
    try {
      return mapper.writeValueAsString(rounded(mapper.readValue(json, Object.class)));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(json, e);
    }
  }

  private static Object rounded(Object value) {
    if (value instanceof Map<?, ?> map) {
      Map<Object, Object> all = new LinkedHashMap<>();
      map.forEach((key, each) -> all.put(key, rounded(each)));
      return all;
    }
    if (value instanceof List<?> list) {
      return list.stream().map(LittleClub::rounded).toList();
    }
    return value instanceof BigDecimal number ? number.round(DIGITS) : value;
  }

  /** Follows a script of page visits; everybody has one browser. */
  Map<String, String> visits(String script, String folder) {
    Map<String, String> seen = new LinkedHashMap<>();
    for (Step raw : Step.read(script)) {
      try {
        visit(raw.with(saved::filled), raw, seen, folder);
      } catch (AssertionError | RuntimeException e) {
        stuck.add(raw + "\n" + e);
      }
    }
    return seen;
  }

  private void visit(Step step, Step raw, Map<String, String> seen, String folder) {
    Browser browser =
        browsers.computeIfAbsent(
            step.has("by") ? step.text("by") : "",
            by -> by.isEmpty() ? new Browser() : Browser.of(people.get(by)));
    switch (step.verb()) {
      case "GET" -> browser.get(step.target());
      case "FOLLOW" -> browser.follow();
      default -> browser.send(step.target(), step.fields("fill"), step.fields("press"));
    }
    if (step.has("save")) {
      saved.put(step.text("save"), browser.location().replaceAll("[?#].*|.*/", ""));
    }
    String told =
        browser.status() == 303
            ? "Location: " + browser.location() + "\n"
            : PageText.of(browser.page(), step.has("whole"));
    keep(seen, folder, raw, browser.status(), told);
  }

  private void keep(Map<String, String> seen, String folder, Step raw, int status, String told) {
    if (raw.has("name")) {
      String who = raw.has("by") ? raw.text("by") : "a stranger";
      String text = raw.text("call") + " by " + who + "\n" + status + "\n" + saved.masked(told);
      seen.merge(folder + "/" + raw.text("name") + ".txt", text, String::concat);
    } else if (raw.has("status") ? !raw.text("status").equals("" + status) : status >= 400) {
      stuck.add(raw + "\n" + status + "\n" + told);
    }
  }

  /** What was sent and answered on the way. */
  Examples examples() {
    return examples;
  }

  /** Steps on the way that went another way than they should. */
  List<String> stuck() {
    return stuck;
  }
}

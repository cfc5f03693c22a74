package club.emberwell.matrix;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.exchange.example.ExampleWork;
import club.emberwell.exchange.open.PackageMaker;
import club.emberwell.keep.Backups;
import club.emberwell.keep.MadeNow;
import club.emberwell.matrix.Crew.Somebody;
import club.emberwell.matrix.Routes.Route;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Every address with every role, real requests on somebody else's things, held against {@code
 * route-matrix.csv}. A route that the file does not list fails the build, and so does a line whose
 * route is gone.
 *
 * <p>A line reads {@code path;method;things;stranger;member;author;moderator;owner}. Things say
 * what stands for the parameters in braces ({@code id=@report}, see {@link Things}; without @ it is
 * the word itself); things are the author's. An expectation is {@code ok}, which means the request
 * got past who may ask (bad input and redirects count), or the status of the refusal. A shut-out
 * member is tried besides: like a stranger on pages, 401 everywhere in the API. So is a credential
 * of the wrong kind: a token on a page and a cookie in the API are worth nothing.
 */
@QuarkusTest
class RouteMatrixTest {
  /** What is sent: a form with a picture, or the picture itself ({@code bytes}), or {@code zip}. */
  private static final String PICTURE = "picture";

  private static final Set<Integer> REFUSALS = Set.of(401, 403, 404, 410);

  @Inject Crew crew;
  @Inject PackageMaker maker;
  @Inject ExampleWork example;
  @Inject Backups backups;

  @AfterEach
  void finishWhatOwnersBegan() {
    MadeNow.awaitRest(backups);
    while (example.step()) {
      // until nothing invented is left
    }
  }

  private final Map<String, Somebody> readers = new HashMap<>();

  @BeforeEach
  void dataToTakeAlong() {
    maker.make();
  }

  @Test
  void metricsHaveRoomForEveryRoute() {
    int room =
        ConfigProvider.getConfig()
            .getValue("quarkus.micrometer.binder.http-server.max-uri-tags", Integer.class);
    long routes = Routes.all().stream().map(Route::path).distinct().count();
    assertTrue(routes < room, () -> "routes: " + routes);
  }

  @Test
  void everyRouteIsListedAndEveryListedRouteIsThere() {
    Set<Route> there = Routes.all();
    Set<Route> listed =
        Line.all().stream().map(Line::route).collect(Collectors.toCollection(TreeSet::new));
    Set<Route> unlisted = new TreeSet<>(there);
    unlisted.removeAll(listed);
    Set<Route> gone = new TreeSet<>(listed);
    gone.removeAll(there);
    assertTrue(
        unlisted.isEmpty() && gone.isEmpty(),
        () ->
            "Routes without a line in route-matrix.csv:\n"
                + unlisted.stream().map(this::suggested).collect(Collectors.joining("\n"))
                + "\nLines whose route is gone:\n"
                + gone.stream().map(Route::toString).collect(Collectors.joining("\n")));
  }

  /** What a line would say if what happens today were right. */
  private String suggested(Route route) {
    if (route.path().contains("{")) {
      return route + "; say what the parameters stand for";
    }
    Line line = new Line(route, "", Map.of());
    return line.told(seen(line));
  }

  @Test
  void everyRoleIsAnsweredAsTheMatrixSays() {
    List<String> wrong = new ArrayList<>();
    for (Line line : Line.all()) {
      Map<String, String> seen = seen(line);
      if (!seen.equals(line.expected())) {
        wrong.add("expected " + line.told(line.expected()) + "\n but was  " + line.told(seen));
      }
    }
    assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
  }

  @Test
  void shutOutMembersAndCredentialsOfTheWrongKindAreWorthNothing() {
    List<String> wrong = new ArrayList<>();
    // nothing comes of what these two ask, so they can ask for everything
    Somebody banned = crew.person("member", "banned");
    Somebody owner = crew.person("owner", "active");
    for (Line line : Line.all()) {
      Things things = new Things(crew, crew.person("member", "active"));
      String stranger = line.expected().get("stranger");
      String shutOut = said(line, things, banned, line.route().api());
      String wrongKind = said(line, things, owner, !line.route().api());
      if (!shutOut.equals(line.route().api() ? "401" : stranger)) {
        wrong.add(line.route() + " shut out: " + shutOut);
      }
      if (!wrongKind.equals(stranger)) {
        wrong.add(line.route() + " wrong credential: " + wrongKind);
      }
    }
    assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
  }

  /**
   * What each role is told; the author comes last, because they may end the thing. Where something
   * may change, owner and author find it anew; who only reads meets the same people and things.
   */
  private Map<String, String> seen(Line line) {
    // wrong passwords of other tests must not slow this one
    crew.run("delete from attempt");
    boolean reads = line.route().method().equals("GET");
    Somebody author = crew.person("member", "active");
    Things things = new Things(crew, author);
    Somebody second = reads ? author : crew.person("member", "active");
    Somebody third = reads ? author : crew.person("member", "active");
    Map<String, String> seen = new LinkedHashMap<>();
    Line.ROLES.forEach(role -> seen.put(role, ""));
    boolean api = line.route().api();
    seen.put("stranger", said(line, things, Somebody.NOBODY, api));
    seen.put("member", said(line, things, other("member", reads), api));
    seen.put("moderator", said(line, things, other("moderator", reads), api));
    Things anew = reads ? things : new Things(crew, second);
    seen.put("owner", said(line, anew, other("owner", reads), api));
    seen.put("author", said(line, reads ? things : new Things(crew, third), third, api));
    return seen;
  }

  private Somebody other(String role, boolean reads) {
    return reads
        ? readers.computeIfAbsent(role, each -> crew.person(each, "active"))
        : crew.person(role, "active");
  }

  private String said(Line line, Things things, Somebody who, boolean byToken) {
    Response answer = send(line.route(), line.address(things), who, byToken, line.sent());
    int status = answer.statusCode();
    assertTrue(status < 500, () -> line.route() + " failed: " + answer.asString());
    boolean signInFirst =
        status == 303 && String.valueOf(answer.header("Location")).contains("/sign-in");
    return signInFirst ? "401" : REFUSALS.contains(status) ? Integer.toString(status) : "ok";
  }

  private static Response send(
      Route route, String path, Somebody who, boolean byToken, String sent) {
    RequestSpecification request = given().redirects().follow(false).urlEncodingEnabled(false);
    if (who.id() != null && byToken) {
      request.header("Authorization", "Bearer " + who.token());
    } else if (who.id() != null) {
      request.cookie("emberwell", who.cookie());
    }
    if (!route.method().equals("GET")) {
      fill(request, route, sent);
    } else {
      request.accept("*/*");
    }
    return request.request(route.method(), path);
  }

  private static void fill(RequestSpecification request, Route route, String sent) {
    if (route.api()) {
      request
          .header("Idempotency-Key", UUID.randomUUID().toString())
          .header("If-Match", "\"999999\"");
    } else {
      Response form = given().get("/test-only/form");
      request.cookie("emberwell-form", form.getCookie("emberwell-form"));
      if (!sent.equals(PICTURE)) {
        request.formParam("form-token", form.asString());
      } else {
        request.multiPart("form-token", form.asString());
      }
    }
    if (sent.equals("bytes")) {
      request.contentType("image/png").body(picture());
    } else if (sent.equals("zip")) {
      request.contentType("application/zip").body(new byte[] {'P', 'K'});
    } else if (sent.equals(PICTURE)) {
      request.multiPart("photo", "a.png", picture(), "image/png");
    } else if (route.api() && !route.method().equals("DELETE")) {
      request.contentType(ContentType.JSON).body("{}");
    }
  }

  private static byte[] picture() {
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    try {
      ImageIO.write(new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB), "png", png);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    return png.toByteArray();
  }
}

package club.emberwell.matrix;

import static io.restassured.RestAssured.given;

import club.emberwell.grid.photo.Corners;
import club.emberwell.matrix.Crew.Somebody;
import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.eclipse.microprofile.config.ConfigProvider;

/**
 * The author's things that a route is tried on, made when first named: each row of the matrix gets
 * its own.
 */
final class Things {
  private final Crew crew;
  private final Somebody author;
  private final Map<String, String> made = new HashMap<>();

  private final Matter matter;

  /** What is burned, and how fast. */
  record Matter(String material, String coating, String speed) {
    static final Matter PLAIN = new Matter("maple", null, "400 mm/s");
  }

  Things(Crew crew, Somebody author) {
    this(crew, author, Matter.PLAIN);
  }

  Things(Crew crew, Somebody author, Matter matter) {
    this.crew = crew;
    this.author = author;
    this.matter = matter;
  }

  String get(String name) {
    String known = made.get(name);
    if (known == null) {
      known = make(name);
      made.put(name, known);
    }
    return known;
  }

  private String make(String name) {
    return switch (name) {
      case "author" -> author.id().toString();
      case "name" -> author.handle();
      case "session" -> author.session().toString();
      case "token" -> author.tokenId().toString();
      case "report" -> report();
      case "waiting" -> waiting();
      case "flagged" -> flagged();
      case "photo" -> photo("report");
      case "photoOfQuestion" -> photo("question");
      case "photoOfAnswer" -> photo("answer");
      case "question" -> post("questions", text());
      case "unseen" -> unseen();
      case "answer" -> post("questions/" + get("question") + "/answers", words());
      case "comment" -> post("reports/" + get("report") + "/comments", words());
      case "notice" -> post("notices", text());
      case "watch" ->
          post("watches", Map.of("query", "q=" + word(matter), "label", "Mine", "mail", false));
      case "feed" -> feed();
      case "find" -> find();
      case "machine" -> post("machines", machine());
      case "sample" -> post("samples", Map.of("what", "Words of " + UUID.randomUUID()));
      case "tag" -> tag(get("sample"));
      case "shown" -> tag(post("samples", Map.of("report", get("report"))));
      case "lot" ->
          post("lots", Map.of("supplier", "Dell", "material", matter.material(), "received", 9));
      case "recipe" -> post("recipes", recipe());
      case "card" -> card(get("recipe"));
      case "recipeLink" -> link();
      case "cardWithPhoto" -> card(recipeWithPhoto());
      case "eyewear" ->
          post("eyewear", Map.of("name", "Green pair", "marking", "OD 6+ @ 900-1100 nm"));
      case "room" -> post("rooms", Map.of("name", "Shed", "volume", "60 m3", "flow", "400 m3/h"));
      case "kept" -> withPhoto("lots", get("lot"));
      case "fixture" -> post("fixtures", Map.of("name", "Jig", "rows", 1, "columns", 1));
      case "held" -> withPhoto("fixtures", get("fixture"));
      case "grid" -> post("grids", grid());
      case "seen" -> seen();
      case "flag" -> flag();
      case "proposal" -> proposal();
      case "note" -> note();
      case "undo" -> undo();
      case "word" -> word();
      case "caution" -> crew.one("select min(id) from caution where not removed");
      case "stylesheet" -> stylesheet();
      case "invitation" -> invitation();
      case "request" -> request();
      case "webhook" -> webhook();
      case "backup" -> backup();
      default -> throw new IllegalArgumentException("no such thing: " + name);
    };
  }

  private String post(String path, Object body) {
    return given()
        .contentType(ContentType.JSON)
        .header("Authorization", "Bearer " + author.token())
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post("/api/v1/" + path)
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private String tag(String id) {
    return crew.one("select code from tag where entry_id = '%s'".formatted(id));
  }

  Map<String, Object> recipe() {
    Map<String, Object> recipe =
        new HashMap<>(
            Map.of(
                "machine",
                get("machine"),
                "material",
                matter.material(),
                "process",
                "surface-engraving",
                "settings",
                Map.of("power", "60 %", "speed", matter.speed(), "lineSpacing", "0.1 mm")));
    return coated(recipe);
  }

  private Map<String, Object> coated(Map<String, Object> work) {
    if (matter.coating() != null) {
      work.put("coating", matter.coating());
    }
    return work;
  }

  private static String word(Matter matter) {
    return matter.material().replace(' ', '+');
  }

  /** The secret of a link to the card of a recipe. */
  private String card(String recipe) {
    String url =
        by(author)
            .post("/api/v1/recipes/" + recipe + "/links")
            .then()
            .statusCode(201)
            .extract()
            .path("url");
    return url.replaceFirst(".*/", "");
  }

  /** The id of such a link. */
  private String link() {
    card(get("recipe"));
    return by(author).get("/api/v1/recipes/" + get("recipe") + "/links").path("items[0].id");
  }

  private String recipeWithPhoto() {
    Map<String, Object> recipe = new HashMap<>(recipe());
    recipe.put("fixture", get("held"));
    return post("recipes", recipe);
  }

  /** A grid with its photo and the corners in it. */
  private String seen() {
    String id = withPhoto("grids", post("grids", grid()));
    by(author)
        .contentType(ContentType.JSON)
        .body(Map.of("corners", Corners.START.all()))
        .put("/api/v1/grids/" + id + "/photo")
        .then()
        .statusCode(200);
    return id;
  }

  private String withPhoto(String what, String id) {
    ByteArrayOutputStream picture = new ByteArrayOutputStream();
    try {
      ImageIO.write(new BufferedImage(80, 80, BufferedImage.TYPE_INT_RGB), "png", picture);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    by(author)
        .contentType("application/octet-stream")
        .body(picture.toByteArray())
        .put("/api/v1/" + what + "/" + id + "/photo")
        .then()
        .statusCode(200);
    return id;
  }

  private static RequestSpecification by(Somebody who) {
    return given().header("Authorization", "Bearer " + who.token());
  }

  /** Four tests on a described laser. */
  Map<String, Object> grid() {
    Map<String, Object> grid = new HashMap<>();
    grid.putAll(
        Map.of(
            "laser",
            Map.of(
                "source",
                "diode",
                "wavelength",
                "455 nm",
                "ratedPower",
                "10 W",
                "motion",
                "gantry"),
            "material",
            matter.material(),
            "process",
            "surface-engraving",
            "settings",
            Map.of("lineSpacing", "0.1 mm"),
            "axes",
            Map.of(
                "across", Map.of("setting", "power", "values", List.of("40 %", "60 %")),
                "down",
                    Map.of("setting", "speed", "values", List.of(matter.speed(), "500 mm/s")))));
    return coated(grid);
  }

  private static Map<String, Object> words() {
    return Map.of("text", "Words of " + UUID.randomUUID());
  }

  private Map<String, Object> text() {
    Map<String, Object> text = new HashMap<>(words());
    text.put("title", "How is " + matter.material() + " engraved?");
    if (matter != Matter.PLAIN) {
      text.put("text", "I use 60 % and " + matter.speed() + " there.");
      Map<String, Object> ties = new HashMap<>(Map.of("material", matter.material()));
      text.put("ties", coated(ties));
    }
    return text;
  }

  /** An owner's: nobody answers there, and nothing is sent in tests. */
  private String webhook() {
    UUID id = UUID.randomUUID();
    crew.run(
        ("insert into webhook (id, member_id, label, url, events, secret, state, version,"
                + " created_at, updated_at) values ('%s', '%s', 'Chat', 'https://chat.example/hook',"
                + " '{result.posted}', 'whsec_AAAA', 'on', 1, now(), now())")
            .formatted(id, author.id()));
    return id.toString();
  }

  /** An owner's: a file that is called so. */
  private String backup() {
    UUID id = UUID.randomUUID();
    Path file =
        ConfigProvider.getConfig()
            .getValue("emberwell.backup.dir", Path.class)
            .resolve("emberwell-" + id + "-20260101T000000Z.zip");
    try {
      Files.createDirectories(file.getParent());
      Files.writeString(file, "none");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    crew.run(
        ("insert into backup (id, cause, state, node, started_at, ended_at, name, path, size_bytes,"
                + " made_at, program, tables, seen_at) values ('%s', 'by-hand', 'kept', 'here',"
                + " now(), now(), '%s', '%s', 4, now(), '1', 1, now())")
            .formatted(id, file.getFileName(), file));
    return id.toString();
  }

  private String feed() {
    String token = UUID.randomUUID() + "-secret";
    crew.run("update watch set feed_token = '%s' where id = '%s'".formatted(token, get("watch")));
    return token;
  }

  private String find() {
    crew.run(
        ("insert into watch_hit (member_id, entry_id, found_at)" + " values ('%s', '%s', now())")
            .formatted(author.id(), get("report")));
    return crew.one("select max(id) from watch_hit where member_id = '%s'".formatted(author.id()));
  }

  /** A question that still waits for a first look. */
  private String unseen() {
    String id = post("questions", text());
    crew.run("update entry set state = 'waiting' where id = '%s'".formatted(id));
    return id;
  }

  private static Map<String, Object> laser() {
    return Map.of(
        "source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
  }

  private static Map<String, Object> machine() {
    Map<String, Object> machine = new HashMap<>(laser());
    machine.put("name", "Shed tube");
    machine.put("regime", "cw");
    return machine;
  }

  private String report() {
    return post("reports", reported());
  }

  Map<String, Object> reported() {
    Map<String, Object> report =
        new HashMap<>(
            Map.of(
                "laser",
                laser(),
                "material",
                matter.material(),
                "process",
                "surface-engraving",
                "settings",
                Map.of("power", "60 %", "speed", matter.speed(), "lineSpacing", "0.1 mm"),
                "effect",
                "right",
                "notes",
                "Words of " + UUID.randomUUID()));
    return coated(report);
  }

  private String waiting() {
    String id = report();
    crew.run("update entry set state = 'waiting' where id = '%s'".formatted(id));
    return id;
  }

  private String flagged() {
    String id = report();
    crew.run(
        ("insert into desk_flag (id, member_id, entry_id, reason, state,"
                + " created_at) values ('%s', '%s', '%s', 'spam', 'open',"
                + " now())")
            .formatted(UUID.randomUUID(), crew.person("member", "active").id(), id));
    return id;
  }

  private String photo(String of) {
    UUID id = UUID.randomUUID();
    crew.run(
        ("insert into entry (id, kind, member_id, state, version, parent_id, title, created_at,"
                + " updated_at) values ('%s', 'photo', '%s', 'live', 1, '%s', 'A photo', now(),"
                + " now())")
            .formatted(id, author.id(), get(of)));
    crew.run(
        ("insert into photo (id, width, height, size_bytes, picture, thumb)"
                + " values ('%s', 1, 1, 2, '\\x00', '\\x00')")
            .formatted(id));
    return id.toString();
  }

  private String flag() {
    UUID id = UUID.randomUUID();
    crew.run(
        ("insert into desk_flag (id, member_id, entry_id, reason, state,"
                + " created_at) values ('%s', '%s', '%s', 'spam', 'open',"
                + " now())")
            .formatted(id, author.id(), get("report")));
    return id.toString();
  }

  private String proposal() {
    UUID id = UUID.randomUUID();
    crew.run(
        ("insert into desk_caution_proposal (id, caution_id, base_version, rule, why, member_id,"
                + " created_at, state) select '%s', 'test-%s', 0,"
                + " rule || jsonb_build_object('id', 'test-%s'), 'A test.', '%s', now(), 'waiting'"
                + " from caution where not removed limit 1")
            .formatted(id, id, id, author.id()));
    return id.toString();
  }

  private String note() {
    String report = get("report");
    crew.run(
        ("insert into desk_rule_note (rule, entry_id, detail, mode, at)"
                + " values ('burst', '%s', 'A test.', 'note', now())")
            .formatted(report));
    return crew.one("select max(id) from desk_rule_note where entry_id = '%s'".formatted(report));
  }

  private String undo() {
    UUID id = UUID.randomUUID();
    crew.run(
        ("insert into desk_undo (id, member_id, since, reason, state, started_by,"
                + " started_at) values ('%s', '%s', now(), 'A test.', 'done', '%s',"
                + " now())")
            .formatted(id, author.id(), crew.person("moderator", "active").id()));
    return id.toString();
  }

  private String word() {
    UUID id = UUID.randomUUID();
    crew.run(
        "insert into unfiled (id, kind, written, folded) values ('%s', 'material', '%s', '%s')"
            .formatted(id, id, id));
    return id.toString();
  }

  private String invitation() {
    UUID id = UUID.randomUUID();
    crew.run(
        ("insert into invitation (id, code_hash, member_id, most, created_at, expires_at) values"
                + " ('%s', '\\x%s', '%s', 3, now(), now() + interval '1 hour')")
            .formatted(id, id.toString().replace("-", ""), author.id()));
    return id.toString();
  }

  private String request() {
    Somebody asks = crew.person("member", "waiting");
    crew.run(
        "insert into join_request (member_id, text, asked_at) values ('%s', 'Please.', now())"
            .formatted(asks.id()));
    return asks.id().toString();
  }

  /** The hash in the name of what every page links. */
  private static String stylesheet() {
    String page = given().get("/").asString();
    return page.replaceFirst("(?s).*/assets/emberwell\\.(\\w+)\\.css.*", "$1");
  }
}

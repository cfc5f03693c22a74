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
      case "question" -> post("questions", matter.text());
      case "unseen" -> unseen();
      case "answer" -> post("questions/" + get("question") + "/answers", Matter.words());
      case "comment" -> post("reports/" + get("report") + "/comments", Matter.words());
      case "notice" -> post("notices", matter.text());
      case "watch" ->
          post("watches", Map.of("query", "q=" + matter.word(), "label", "Mine", "mail", false));
      case "feed" -> feed();
      case "find" -> find();
      case "machine" -> post("machines", Matter.machine());
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
      case "spelling" -> spelling();
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
    String id = post("questions", matter.text());
    crew.run("update entry set state = 'waiting' where id = '%s'".formatted(id));
    return id;
  }

  Map<String, Object> recipe() {
    return matter.recipe(get("machine"));
  }

  Map<String, Object> grid() {
    return matter.grid();
  }

  Map<String, Object> reported() {
    return matter.reported();
  }

  private String report() {
    return post("reports", reported());
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

  private String spelling() {
    UUID id = UUID.randomUUID();
    crew.run(
        ("insert into supplier_spelling (code, spelling, head_code, head, member_id, at, reason)"
                + " values ('%s', '%s', 'none', 'None', '%s', now(), 'A test.')")
            .formatted(id, id, author.id()));
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

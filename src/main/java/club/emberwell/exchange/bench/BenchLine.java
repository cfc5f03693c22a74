package club.emberwell.exchange.bench;

import club.emberwell.catalog.CautionMark;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Returned;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Coded;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/** A thing as a line of a copy says it: written out of the rows of a member's data, and read. */
final class BenchLine {
  /** What an owner can do to what nobody else sees. */
  private static final Set<EntryAction> OWN =
      Set.of(
          EntryAction.POSTED,
          EntryAction.EDITED,
          EntryAction.WITHDRAWN,
          EntryAction.RESTORED,
          EntryAction.READ_AGAIN);

  private static final String CAUTION = "caution";
  private static final int MOST_REVISIONS = 1_000;
  private static final int LONGEST_REASON = 2_000;

  /** Clocks of two servers differ. */
  private static final Duration AHEAD = Duration.ofDays(1);

  private static final Instant EARLIEST = Instant.parse("2000-01-01T00:00:00Z");

  private final BenchKind kind;
  private final ObjectNode json;

  /** Its words as they came, before anything in them was led elsewhere. */
  private final String said;

  private BenchLine(BenchKind kind, ObjectNode json) {
    this.kind = kind;
    this.json = json;
    said = json.path("written").toString();
  }

  /** A line does not say what it has to. */
  static final class Unreadable extends RuntimeException {
    Unreadable(String sentence) {
      super(sentence);
    }
  }

  /**
   * A row of a member's data as a line.
   *
   * @param picture its place in the file, or null
   */
  static BenchLine of(BenchKind kind, JsonNode row, ObjectNode picture) {
    ObjectNode line = CopyJson.MAPPER.createObjectNode();
    boolean machine = kind == BenchKind.MACHINE;
    line.set("id", row.get("id"));
    line.put("kind", kind.code());
    line.set("name", row.get(machine ? "name" : "title"));
    line.put(
        "state",
        machine
            ? row.path("deleted_at").isNull() ? "live" : "withdrawn"
            : row.path("state").asText());
    line.set("version", row.get("version"));
    line.set("createdAt", row.get("created_at"));
    line.set("updatedAt", row.get("updated_at"));
    line.put("numberStyle", row.path("number_style").asText(NumberStyle.ANY.code()));
    copy(row, "tag", line, "tag");
    copy(row, "used_at", line, "usedAt");
    if (row.hasNonNull("results")) {
      ObjectNode results = line.putObject("results");
      results.set("report", row.get("report_id"));
      results.set("trials", row.get("results").path("trials"));
    }
    if (row.path("reports").isArray()) {
      ArrayNode reports = line.putArray("reports");
      row.get("reports")
          .forEach(
              one ->
                  reports
                      .addObject()
                      .put("report", one.path("report_id").asText())
                      .put("version", one.path("version").asInt()));
    }
    if (picture != null) {
      line.set("picture", picture);
    }
    ArrayNode revisions = CopyJson.MAPPER.createArrayNode();
    row.path("revisions").forEach(one -> revisions.add(revision(one)));
    line.set("written", machine ? row.get("written") : newest(revisions));
    if (!machine) {
      line.set("revisions", revisions);
    }
    return new BenchLine(kind, line);
  }

  private static ObjectNode revision(JsonNode row) {
    ObjectNode revision = CopyJson.MAPPER.createObjectNode();
    revision.set("version", row.get("version"));
    revision.set("action", row.get("action"));
    revision.set("at", row.get("at"));
    revision.set("state", row.get("state"));
    copy(row, "reason", revision, "reason");
    copy(row, "written", revision, "written");
    return revision;
  }

  private static void copy(JsonNode from, String column, ObjectNode to, String field) {
    if (from.hasNonNull(column)) {
      to.set(field, from.get(column));
    }
  }

  private static JsonNode newest(JsonNode revisions) {
    JsonNode newest = null;
    for (JsonNode one : revisions) {
      newest = one.hasNonNull("written") ? one.get("written") : newest;
    }
    return newest;
  }

  /** A line that somebody brought along. */
  static BenchLine brought(BenchKind kind, JsonNode json) {
    if (!(json instanceof ObjectNode object)) {
      throw new Unreadable("It is no JSON object.");
    }
    BenchLine line = new BenchLine(kind, object);
    if (!kind.code().equals(json.path("kind").asText())) {
      throw new Unreadable("Its kind is not \"%s\".".formatted(kind.code()));
    }
    line.id();
    if (!json.path("written").isObject() || holdsNothing(json)) {
      throw new Unreadable("It has no words, or a list with nothing in one place.");
    }
    if (kind != BenchKind.MACHINE && !line.written().equals(newest(json.path("revisions")))) {
      throw new Unreadable("Its words are not those of its newest revision.");
    }
    return line;
  }

  /** Nobody's list has a null in it. */
  private static boolean holdsNothing(JsonNode json) {
    for (JsonNode one : json) {
      if (json.isArray() && one.isNull() || holdsNothing(one)) {
        return true;
      }
    }
    return false;
  }

  BenchKind kind() {
    return kind;
  }

  ObjectNode json() {
    return json;
  }

  UUID id() {
    return uuid(json.path("id"), "id");
  }

  /** What lists called it. */
  String name() {
    String name = json.path("name").asText("").replaceAll("\\p{Cntrl}", " ").strip();
    return name.isEmpty() ? "(no name)" : name.substring(0, Math.min(name.length(), 120));
  }

  boolean live() {
    return json.path("state").asText().equals("live");
  }

  ObjectNode written() {
    return (ObjectNode) json.get("written");
  }

  String said() {
    return said;
  }

  /** A word of its newest words; empty where there is none. */
  String said(String field) {
    return written().path(field).asText("");
  }

  /** What may harm where it is used; told to whoever reads the file, and found anew on return. */
  void caution(CautionMark mark) {
    json.put(CAUTION, mark.sentence());
    ArrayNode codes = json.putArray("cautionCodes");
    mark.codes().forEach(codes::add);
  }

  /** Null where it has none. */
  String caution() {
    return json.path(CAUTION).asText(null);
  }

  /** Every place where words stand: the newest, and those of each version. */
  List<ObjectNode> words() {
    List<ObjectNode> all = new ArrayList<>(List.of(written()));
    for (JsonNode one : json.path("revisions")) {
      if (one.path("written") instanceof ObjectNode words) {
        all.add(words);
      }
    }
    return all;
  }

  /** Its place in the file; null where it has none. */
  String picture() {
    return json.at("/picture/file").asText(null);
  }

  /** The corners of a grid in its picture, x and y of the four; empty where none are marked. */
  List<Double> corners() {
    List<Double> all = new ArrayList<>();
    json.at("/picture/corners").forEach(one -> all.add(one.asDouble()));
    return all;
  }

  NumberStyle style() {
    return Coded.of(NumberStyle.class, json.path("numberStyle").asText(NumberStyle.ANY.code()))
        .orElseThrow(() -> new Unreadable("Its numberStyle is none of any, point and comma."));
  }

  int version() {
    int version = json.path("version").asInt();
    if (version < 1) {
      throw new Unreadable("Its version is no number from 1.");
    }
    return version;
  }

  Instant at(String field) {
    return time(json.path(field), field);
  }

  Instant atIfGiven(String field) {
    return json.hasNonNull(field) ? at(field) : null;
  }

  UUID idIfGiven(String pointer) {
    JsonNode there = json.at(pointer);
    return there.isMissingNode() || there.isNull() ? null : uuid(there, pointer);
  }

  /** Every version it had. */
  List<Returned.Past> past() {
    List<Returned.Past> all = new ArrayList<>();
    for (JsonNode one : json.path("revisions")) {
      boolean last = all.size() == json.get("revisions").size() - 1;
      all.add(past(one, all.size() + 1, last));
    }
    if (all.isEmpty() || all.size() > MOST_REVISIONS) {
      throw new Unreadable("It needs 1 to %d revisions.".formatted(MOST_REVISIONS));
    }
    return all;
  }

  private Returned.Past past(JsonNode one, int number, boolean last) {
    EntryAction action = action(one.path("action").asText());
    EntryState state =
        one.path("state").asText().equals("withdrawn") ? EntryState.WITHDRAWN : EntryState.LIVE;
    boolean fits =
        one.path("version").asInt() == number
            && (number == 1) == (action == EntryAction.POSTED)
            && (state == EntryState.WITHDRAWN) == (action == EntryAction.WITHDRAWN)
            && (state == EntryState.LIVE || last)
            && (!last || live() == (state == EntryState.LIVE));
    String reason = one.path("reason").asText(null);
    if (!fits || reason != null && reason.length() > LONGEST_REASON) {
      throw new Unreadable(
          "Its revision %d does not follow from the one before.".formatted(number));
    }
    JsonNode words = one.get("written");
    return new Returned.Past(
        action,
        time(one.path("at"), "revisions"),
        reason,
        state,
        words == null || words.isNull() ? null : CopyJson.line(words));
  }

  private static EntryAction action(String said) {
    return OWN.stream()
        .filter(action -> action.code().equals(said))
        .findFirst()
        .orElseThrow(() -> new Unreadable("There is no action \"%s\".".formatted(said)));
  }

  private static Instant time(JsonNode said, String field) {
    try {
      Instant time = Instant.parse(said.asText());
      if (time.isAfter(EARLIEST) && time.isBefore(Instant.now().plus(AHEAD))) {
        return time;
      }
    } catch (DateTimeException e) {
      // said below, for both
    }
    throw new Unreadable("%s holds no time that can be.".formatted(field));
  }

  /** Of another object in the line. */
  UUID idOf(JsonNode object, String field) {
    return uuid(object.path(field), field);
  }

  private static UUID uuid(JsonNode said, String field) {
    try {
      String text = said.asText();
      UUID id = UUID.fromString(text);
      if (id.toString().equals(text)) {
        return id;
      }
    } catch (IllegalArgumentException e) {
      // said below, for both
    }
    throw new Unreadable("%s holds no id.".formatted(field));
  }
}

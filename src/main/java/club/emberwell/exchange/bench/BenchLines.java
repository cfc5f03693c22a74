package club.emberwell.exchange.bench;

import club.emberwell.exchange.MemberRowsRepository;
import club.emberwell.exchange.PersonalData;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

/** The things of a bench as lines: the same rows as in the download of all of a member's data. */
@ApplicationScoped
class BenchLines {
  private static final String GRID_PHOTOS = "grid-photos.json";
  private static final String KEPT_PHOTOS = "kept-photos.json";

  private final List<PersonalData> features;
  private final MemberRowsRepository rows;

  BenchLines(@All List<PersonalData> features, MemberRowsRepository rows) {
    this.features = features;
    this.rows = rows;
  }

  /** Of one kind in the order in which they were made; to be closed. */
  Stream<BenchLine> of(UUID member, BenchKind kind) {
    Map<String, ObjectNode> pictures = pictures(member, kind);
    return rows(member, kind.ofMember())
        .map(row -> BenchLine.of(kind, row, stands(row) ? pictures.get(id(row)) : null));
  }

  private static boolean stands(JsonNode row) {
    return row.path("state").asText().equals("live");
  }

  private static String id(JsonNode row) {
    return row.path("id").asText();
  }

  private Map<String, ObjectNode> pictures(UUID member, BenchKind kind) {
    Map<String, ObjectNode> all = new HashMap<>();
    String list = kind == BenchKind.GRID ? GRID_PHOTOS : KEPT_PHOTOS;
    String owner = kind == BenchKind.GRID ? "grid_id" : "entry_id";
    try (Stream<JsonNode> found = rows(member, list)) {
      found.forEach(row -> all.put(row.path(owner).asText(), picture(kind, row, owner)));
    }
    return all;
  }

  private static ObjectNode picture(BenchKind kind, JsonNode row, String owner) {
    ObjectNode picture = CopyJson.MAPPER.createObjectNode();
    picture.put("file", kind.picture(row.path(owner).asText()));
    if (row.path("corners").isArray()) {
      picture.set("corners", row.get("corners"));
    }
    return picture;
  }

  /** The JPEG of a line that has one. */
  byte[] picture(BenchLine line) {
    return line.kind() == BenchKind.GRID
        ? rows.gridPicture(line.id())
        : rows.keptPicture(line.id());
  }

  private Stream<JsonNode> rows(UUID member, String list) {
    return features.stream()
        .flatMap(feature -> feature.lists().stream())
        .filter(one -> one.file().equals(list))
        .findFirst()
        .map(one -> rows.json(one.select(), member).map(CopyJson::ours))
        .orElseThrow();
  }
}

package club.emberwell.search.index;

import club.emberwell.entry.change.ChangeLog.Known;
import club.emberwell.entry.change.ChangeLog.Mark;
import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.search.column.PackedCodes;
import club.emberwell.search.match.TextField;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/**
 * What an index says of itself in its commits.
 *
 * @param known the database it was made from, and how far it has read there
 * @param vocabulary content hash of the words it was written with
 */
public record IndexStamp(Known known, String vocabulary) {
  /** Rises whenever documents are written otherwise than before. */
  private static final int WRITING = 5;

  /** What the documents hold: other catalogues make another index. */
  static final String SCHEMA =
      WRITING
          + " "
          + Objects.hash(
              Measure.all().toString(),
              PackedCodes.catalogue(),
              List.of(Facet.values()).toString(),
              TextField.all().toString());

  Map<String, String> toUserData() {
    Mark last = known.last();
    Map<String, String> data = new HashMap<>();
    data.put("schema", SCHEMA);
    data.put("history", known.history().toString());
    data.put("number", Long.toString(known.number()));
    data.put("xid", Long.toString(last.position().xid()));
    data.put("seq", Long.toString(last.position().seq()));
    if (last.id() != null) {
      data.put("id", last.id().toString());
      data.put("at", last.at().toString());
    }
    data.put("vocabulary", vocabulary);
    return data;
  }

  /**
   * @throws IllegalArgumentException for data of another schema or none at all
   */
  static IndexStamp of(Map<String, String> userData) {
    Map<String, String> data = new HashMap<>(userData);
    if (!SCHEMA.equals(data.get("schema"))) {
      throw new IllegalArgumentException("written with schema " + data.get("schema"));
    }
    Position position =
        new Position(Long.parseLong(data.get("xid")), Long.parseLong(data.get("seq")));
    String id = data.get("id");
    Mark last =
        id == null
            ? new Mark(position, null, null)
            : new Mark(position, UUID.fromString(id), Instant.parse(data.get("at")));
    UUID history = UUID.fromString(data.get("history"));
    Known known = new Known(history, Long.parseLong(data.get("number")), last);
    return new IndexStamp(known, data.get("vocabulary"));
  }

  public IndexStamp at(Mark newer) {
    return new IndexStamp(known.at(newer), vocabulary);
  }
}

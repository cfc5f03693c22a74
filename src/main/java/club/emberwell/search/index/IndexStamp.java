package club.emberwell.search.index;

import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.search.column.PackedCodes;
import club.emberwell.search.match.TextField;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/**
 * What an index says of itself in its commits.
 *
 * @param epoch history of the database it was made from
 * @param position everything before it is in the index
 * @param vocabulary content hash of the words it was written with
 */
public record IndexStamp(UUID epoch, Position position, String vocabulary) {
  /** Rises whenever documents are written otherwise than before. */
  private static final int WRITING = 4;

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
    return Map.of(
        "schema", SCHEMA,
        "epoch", epoch.toString(),
        "xid", Long.toString(position.xid()),
        "seq", Long.toString(position.seq()),
        "vocabulary", vocabulary);
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
    return new IndexStamp(UUID.fromString(data.get("epoch")), position, data.get("vocabulary"));
  }

  public IndexStamp at(Position newer) {
    return new IndexStamp(epoch, newer, vocabulary);
  }

  /** False where this index is of another history or change rows behind it are gone. */
  public boolean canFollow(UUID history, Position trimmedTo) {
    return epoch.equals(history) && !position.isBefore(trimmedTo);
  }
}

package club.emberwell.room;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Words;
import club.emberwell.entry.own.OwnWords;
import club.emberwell.quantity.NumberStyle;

/**
 * A room that was read.
 *
 * @param style by which its numbers were
 * @param values what its owner's words mean
 */
record ReadRoom(WrittenRoom written, NumberStyle style, RoomValues values) implements OwnWords {
  static ReadRoom of(WrittenRoom written, NumberStyle style) {
    return new ReadRoom(written, style, RoomReader.read(written, style));
  }

  @Override
  public Words words() {
    return new Words(values.name(), StoredJson.write(written), null);
  }
}

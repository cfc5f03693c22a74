package club.emberwell.eyewear;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Words;
import club.emberwell.entry.own.OwnWords;
import org.jspecify.annotations.Nullable;

/**
 * A pair of glasses as its owner wrote it down.
 *
 * @param name the owner's own
 * @param marking what is printed on it, line by line
 */
public record WrittenGlasses(
    @Nullable String name, @Nullable String marking, @Nullable String notes) implements OwnWords {
  @Override
  public Words words() {
    return new Words(name, StoredJson.write(this), null);
  }
}

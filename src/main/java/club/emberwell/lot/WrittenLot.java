package club.emberwell.lot;

import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Words;
import club.emberwell.entry.own.OwnWords;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A delivery as its owner wrote it down.
 *
 * @param supplier from whom
 * @param batch what the supplier calls the lot; reports that name it so are of it
 * @param date when it came, ISO 8601; null = not given
 * @param inspection what was seen when the pieces were looked at
 * @param shared whether supplier, pieces, month and counts are counted with those of other members
 */
public record WrittenLot(
    @Nullable String supplier,
    @Nullable String batch,
    @JsonUnwrapped Blank blank,
    @JsonUnwrapped Counts counts,
    @Nullable String date,
    @Nullable String inspection,
    @Nullable String notes,
    @Nullable Boolean shared)
    implements OwnWords {
  public WrittenLot {
    blank = blank == null ? Blank.NONE : blank;
    counts = counts == null ? Counts.NONE : counts;
    shared = Boolean.TRUE.equals(shared);
  }

  /** "Steel tumbler, powder coat, navy, from North Blanks". */
  @Override
  public Words words() {
    String pieces =
        Stream.of(blank.material(), blank.coating(), blank.colour())
            .filter(Objects::nonNull)
            .collect(Collectors.joining(", "));
    return new Words(pieces + ", from " + supplier, StoredJson.write(this), null);
  }

  /** What the pieces are, in the owner's words. */
  public record Blank(
      @Nullable String material, @Nullable String coating, @Nullable String colour) {
    static final Blank NONE = new Blank(null, null, null);
  }

  /**
   * Pieces; null = not given.
   *
   * @param received that came
   * @param usable of these
   * @param burned of these
   */
  public record Counts(
      @Nullable Integer received, @Nullable Integer usable, @Nullable Integer burned) {
    static final Counts NONE = new Counts(null, null, null);

    /** Whether the lot says what share was usable. */
    public boolean inspected() {
      return received != null && usable != null;
    }
  }
}

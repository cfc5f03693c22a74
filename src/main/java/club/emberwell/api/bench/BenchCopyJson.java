package club.emberwell.api.bench;

import club.emberwell.exchange.bench.BenchKind;
import club.emberwell.exchange.bench.CopyOutcome;
import club.emberwell.exchange.bench.CopyOutcome.Fate;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What became of a copy of a bench, or would.
 *
 * @param preview true: nothing was written
 * @param copy what the file says of itself
 * @param counts of each kind
 * @param things in the order in which they are restored
 */
@Schema(name = "BenchRestore")
record BenchCopyJson(
    boolean preview, Said copy, List<Count> counts, List<ThingJson> things, PhotosJson photos) {
  static BenchCopyJson of(CopyOutcome outcome) {
    return new BenchCopyJson(
        outcome.preview(),
        new Said(outcome.savedAt(), outcome.member()),
        List.of(BenchKind.values()).stream().map(kind -> Count.of(kind, outcome)).toList(),
        outcome.things().stream().map(ThingJson::of).toList(),
        new PhotosJson(
            outcome.photos().restored(), outcome.photos().left(), outcome.photos().refused()));
  }

  /**
   * What a copy says of itself; nobody vouches for it.
   *
   * @param saved when
   * @param handle whose bench it was
   */
  @Schema(name = "BenchCopySaid")
  record Said(String saved, String handle) {}

  /**
   * How many of a kind.
   *
   * @param fresh that were not here
   * @param alike that are here already
   * @param beside that are here with other words; those of the copy stand beside them
   */
  @Schema(name = "BenchRestoreCount")
  record Count(BenchKind kind, long fresh, long alike, long beside, long refused) {
    static Count of(BenchKind kind, CopyOutcome outcome) {
      return new Count(
          kind,
          many(kind, outcome, Fate.NEW),
          many(kind, outcome, Fate.ALIKE),
          many(kind, outcome, Fate.BESIDE),
          many(kind, outcome, Fate.REFUSED));
    }

    private static long many(BenchKind kind, CopyOutcome outcome, Fate fate) {
      return outcome.of(kind).stream().filter(thing -> thing.fate() == fate).count();
    }
  }

  /**
   * A thing of the copy.
   *
   * @param line in the list of its kind, 1 = the first
   * @param was its id in the copy; left out where that cannot be read
   * @param id under which it is here; left out where it is refused
   * @param name as it is called here
   * @param sentences why it is refused, or what of it could not be kept
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "RestoredThing")
  record ThingJson(
      BenchKind kind,
      int line,
      @Nullable UUID was,
      @Nullable UUID id,
      String name,
      Fate fate,
      List<String> sentences) {
    static ThingJson of(CopyOutcome.Thing thing) {
      return new ThingJson(
          thing.kind(),
          thing.line(),
          thing.was(),
          thing.id(),
          thing.name(),
          thing.fate(),
          thing.notes().stream().map(CopyOutcome.Note::toString).toList());
    }
  }

  /**
   * Pictures.
   *
   * @param restored that came back, or would
   * @param left for which there was no time: send the same file again
   * @param sentences about those that are refused
   */
  @Schema(name = "RestoredPhotos")
  record PhotosJson(int restored, int left, List<String> sentences) {}
}

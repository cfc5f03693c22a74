package club.emberwell.catalog;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a caution is about; an empty list limits nothing. A caution without materials and coatings
 * is general: it goes with every work of its processes and sources, unless it is about what is not
 * in the vocabulary.
 *
 * @param materials slugs; everything below them in the tree is meant too, unless {@code exactly}
 * @param coatings slugs, likewise; a caution with both goes with either
 * @param exactly true where the caution stays with the named terms themselves
 * @param unlisted true where it is about whatever the vocabulary does not hold, else null
 * @param processes codes of {@link club.emberwell.laser.Process}
 * @param sources codes of {@link club.emberwell.laser.LaserSource}
 * @param thicknessAboveMm only above this thickness, mm; an unknown thickness counts as above
 */
public record CautionScope(
    List<String> materials,
    List<String> coatings,
    boolean exactly,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Boolean unlisted,
    List<String> processes,
    List<String> sources,
    Double thicknessAboveMm) {
  public CautionScope {
    unlisted = Boolean.TRUE.equals(unlisted) ? Boolean.TRUE : null;
    materials = copy(materials);
    coatings = copy(coatings);
    processes = copy(processes);
    sources = copy(sources);
  }

  private static List<String> copy(List<String> list) {
    return list == null ? List.of() : List.copyOf(list);
  }

  /** True where it is not about all that is done to what it names. */
  public boolean narrows() {
    return !processes.isEmpty() || !sources.isEmpty() || thicknessAboveMm != null;
  }

  /** True where it is about whatever the vocabulary does not hold. */
  public boolean meansUnlisted() {
    return unlisted != null;
  }

  /** True where it goes with every work. */
  public boolean goesWithAll() {
    return materials.isEmpty() && coatings.isEmpty() && !meansUnlisted();
  }
}

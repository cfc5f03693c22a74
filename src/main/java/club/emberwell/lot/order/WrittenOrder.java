package club.emberwell.lot.order;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;

/**
 * What somebody needs.
 *
 * @param lines one for each colour; null and empty ones do not count
 * @param tests pieces of each line that go into tests; null = none
 * @param chance that enough of all lines are usable, 0.5 to 0.999; null = 0.9
 */
public record WrittenOrder(
    List<Needed> lines, Integer tests, Double chance, @JsonUnwrapped Basis basis) {
  public WrittenOrder {
    lines = lines == null ? List.of() : lines;
    basis = basis == null ? Basis.NONE : basis;
  }

  /**
   * Good pieces of one sort.
   *
   * @param name a colour, or null
   */
  public record Needed(String name, Integer pieces) {
    boolean said() {
      return pieces != null || name != null && !name.isBlank();
    }
  }

  /**
   * What is known of the usable share: own lots, a record or the share itself; at most one of
   * these.
   *
   * @param lots a supplier of one's own lots, or {@code all}
   * @param usable of a record
   * @param received of the same record
   * @param share more than 0, at most 1
   */
  public record Basis(String lots, Integer usable, Integer received, Double share) {
    static final Basis NONE = new Basis(null, null, null, null);
  }
}

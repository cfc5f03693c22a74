package club.emberwell.lot.order;

import club.emberwell.remark.Coded;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How many to order.
 *
 * @param total of all lines
 * @param wanted the chance that was asked for
 * @param chance that enough of every line are usable, at least (the chances to fail added up)
 */
public record Order(List<Line> lines, int total, double wanted, double chance, Usable usable) {
  public Order {
    lines = List.copyOf(lines);
  }

  /**
   * One line of it.
   *
   * @param name null where it has none
   * @param pieces that must be good
   * @param tests that go into tests beside them
   * @param order how many to order
   * @param chance that enough of them are usable
   * @param expected how many are usable on average
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Line(
      @Nullable String name, int pieces, int tests, int order, double chance, double expected) {}

  /**
   * What the usable share was taken from.
   *
   * @param lots of one's own that were counted; 0 where it was none
   * @param sharedLots of other members that were counted beside them; null where it was none
   * @param usable of the pieces counted; null where the share is known
   * @param alpha of the beta distribution of the share; null where it is known
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Usable(
      From from,
      int lots,
      @Nullable Integer sharedLots,
      @Nullable Integer usable,
      @Nullable Integer received,
      double share,
      @Nullable Double alpha,
      @Nullable Double beta) {}

  /** Where the usable share comes from. */
  public enum From implements Coded {
    /** One's own lots; they may differ. */
    LOTS("lots"),
    /** One's own lots, which are few, and those of the same supplier that others share. */
    SHARED_LOTS("shared-lots"),
    /** Pieces counted elsewhere, taken as they are with Jeffreys' prior. */
    RECORD("record"),
    /** The share itself is known. */
    SHARE("share"),
    /** Nothing is known: as a record of 9 usable of 10. */
    ASSUMED("assumed");

    private final String code;

    From(String code) {
      this.code = code;
    }

    @Override
    public String code() {
      return code;
    }
  }
}

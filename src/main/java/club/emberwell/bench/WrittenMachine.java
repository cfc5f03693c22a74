package club.emberwell.bench;

import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;

/**
 * A machine exactly as its owner described it; null = not given.
 *
 * @param model what its maker calls it
 * @param confirmed pointers of implausible values the owner said are meant
 */
public record WrittenMachine(
    String name,
    String model,
    @JsonUnwrapped WrittenLaser laser,
    Boolean gated,
    String pulseControl,
    WrittenQuantity maxSpeed,
    @JsonUnwrapped Built built,
    List<String> confirmed) {
  public WrittenMachine {
    built = built == null ? Built.NONE : built;
  }

  /**
   * What is built round the laser, and how the beam leaves it.
   *
   * @param housing what stands between the beam and people
   * @param divergence by which full angle the beam widens without a lens, at 1/e2
   */
  public record Built(String controllerVersion, String housing, WrittenQuantity divergence) {
    static final Built NONE = new Built(null, null, null);
  }
}

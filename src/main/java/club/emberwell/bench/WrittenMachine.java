package club.emberwell.bench;

import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;

/**
 * A machine exactly as its owner described it; null = not given.
 *
 * @param model what its maker calls it
 * @param housing what stands between the beam and people
 * @param confirmed pointers of implausible values the owner said are meant
 */
public record WrittenMachine(
    String name,
    String model,
    @JsonUnwrapped WrittenLaser laser,
    Boolean gated,
    String pulseControl,
    WrittenQuantity maxSpeed,
    String controllerVersion,
    String housing,
    List<String> confirmed) {
  @JsonCreator
  public WrittenMachine {
    // the canonical one is what a program's words are read into
  }

  /** One of which nobody said how it is closed. */
  public WrittenMachine(
      String name,
      String model,
      WrittenLaser laser,
      Boolean gated,
      String pulseControl,
      WrittenQuantity maxSpeed,
      String controllerVersion,
      List<String> confirmed) {
    this(name, model, laser, gated, pulseControl, maxSpeed, controllerVersion, null, confirmed);
  }
}

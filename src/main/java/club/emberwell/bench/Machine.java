package club.emberwell.bench;

import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import java.time.Instant;
import java.util.UUID;

/**
 * A member's own laser, detached.
 *
 * @param read what its owner's words mean
 * @param numberStyle by which the written numbers were read
 */
public record Machine(
    Standing standing, MachineReader.Values read, WrittenMachine written, NumberStyle numberStyle) {
  /**
   * Which machine of whom, in which version.
   *
   * @param number small integer identity, for columns
   * @param deletedAt null while the owner keeps it
   */
  public record Standing(
      UUID id,
      long number,
      UUID memberId,
      int version,
      Instant createdAt,
      Instant updatedAt,
      Instant deletedAt) {}

  public UUID id() {
    return standing.id();
  }

  public int version() {
    return standing.version();
  }

  public String name() {
    return read.name();
  }

  /** What its maker calls it; null where not said. */
  public String model() {
    return read.model();
  }

  public Laser laser() {
    return read.laser();
  }

  /** Whether the spot size is calculated from lens and beam; nobody gave it. */
  public boolean isSpotCalculated() {
    return laser().beamDiameterUm() != null && FieldReader.isAbsent(written.laser().beamDiameter());
  }

  /** The diameter of the beam before the lens, mm; null where nobody gave it. */
  public Double inputBeamMm() {
    return MachineReader.inputBeamMm(new FieldReader(numberStyle), "", written.laser());
  }

  /** Null where not said or not pulsed. */
  public PulseControl pulseControl() {
    return read.pulseControl();
  }

  public String controllerVersion() {
    return read.controllerVersion();
  }

  /** Null where its owner did not say. */
  public Housing housing() {
    return read.housing();
  }

  /** The full angle by which the beam widens without a lens, at 1/e2; null where nobody said. */
  public Double divergenceMrad() {
    return read.divergenceMrad();
  }
}

package club.emberwell.api.machine;

import club.emberwell.api.view.LaserJson;
import club.emberwell.api.view.Noticed;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.Times;
import club.emberwell.bench.Housing;
import club.emberwell.bench.Machine;
import club.emberwell.bench.PulseControl;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.Remark;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A machine with what was typed beside what was read. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record MachineJson(
    UUID id,
    int version,
    @JsonUnwrapped Called called,
    @JsonUnwrapped LaserJson laser,
    @JsonUnwrapped Built built,
    @JsonUnwrapped Noticed noticed,
    @JsonUnwrapped Times times) {
  /**
   * What it is called.
   *
   * @param name by its owner
   * @param model by its maker
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Called(String name, @Nullable String model) {}

  /**
   * What is built round the laser, and how the beam leaves it.
   *
   * @param housing what stands between the beam and people
   * @param divergence by which full angle the beam widens without a lens, at 1/e2
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Built(
      @Nullable PulseControl pulseControl,
      @Nullable String controllerVersion,
      @Nullable Housing housing,
      @Nullable QuantityJson divergence) {
    static Built of(Machine machine) {
      return new Built(
          machine.pulseControl(),
          machine.controllerVersion(),
          machine.housing(),
          QuantityJson.of(
              QuantityKind.DIVERGENCE,
              machine.divergenceMrad(),
              machine.written().built().divergence()));
    }
  }

  static MachineJson of(Machine machine, List<Remark> noticed) {
    WrittenMachine w = machine.written();
    LaserJson.Written written =
        new LaserJson.Written(
            w.laser().wavelength(),
            w.laser().ratedPower(),
            w.laser().lens(),
            w.laser().beamDiameter(),
            w.maxSpeed(),
            QuantityJson.of(QuantityKind.LENGTH, machine.inputBeamMm(), w.laser().inputBeam()));
    return new MachineJson(
        machine.id(),
        machine.version(),
        new Called(machine.name(), machine.model()),
        LaserJson.of(machine.laser(), written),
        Built.of(machine),
        Noticed.of(noticed),
        new Times(machine.standing().createdAt(), machine.standing().updatedAt()));
  }
}

package club.emberwell.api.machine;

import club.emberwell.api.view.LaserJson;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.RemarkJson;
import club.emberwell.bench.Machine;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.Remark;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** A machine with what was typed beside what was read. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record MachineJson(
    UUID id,
    int version,
    String name,
    @JsonUnwrapped LaserJson laser,
    String pulseControl,
    String controllerVersion,
    List<RemarkJson> warnings,
    List<RemarkJson> remarks,
    Instant createdAt,
    Instant updatedAt) {
  static MachineJson of(Machine machine, List<Remark> noticed) {
    return new MachineJson(
        machine.id(),
        machine.version(),
        machine.name(),
        laser(machine),
        machine.pulseControl() == null ? null : machine.pulseControl().code(),
        machine.controllerVersion(),
        RemarkJson.warnings(noticed),
        RemarkJson.notes(noticed),
        machine.createdAt(),
        machine.updatedAt());
  }

  private static LaserJson laser(Machine machine) {
    LaserJson read = LaserJson.of(machine.laser());
    WrittenMachine w = machine.written();
    var laser = machine.laser();
    return new LaserJson(
        read.source(),
        QuantityJson.of(QuantityKind.WAVELENGTH, laser.wavelengthNm(), w.wavelength()),
        QuantityJson.of(QuantityKind.POWER, laser.ratedPowerW(), w.ratedPower()),
        read.motion(),
        read.regime(),
        read.gated(),
        QuantityJson.of(QuantityKind.FOCAL_LENGTH, laser.lensFocalMm(), w.lens()),
        QuantityJson.of(QuantityKind.BEAM_DIAMETER, laser.beamDiameterUm(), w.beamDiameter()),
        QuantityJson.of(QuantityKind.SPEED, laser.maxSpeedMmS(), w.maxSpeed()));
  }
}

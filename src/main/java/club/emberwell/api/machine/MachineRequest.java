package club.emberwell.api.machine;

import club.emberwell.bench.WrittenMachine;
import club.emberwell.quantity.WrittenQuantity;
import java.util.List;
import java.util.UUID;

/**
 * A machine as sent.
 *
 * @param id made by the client, or left out
 */
record MachineRequest(
    UUID id,
    String name,
    String source,
    WrittenQuantity wavelength,
    WrittenQuantity ratedPower,
    String motion,
    String regime,
    Boolean gated,
    String pulseControl,
    WrittenQuantity lens,
    WrittenQuantity beamDiameter,
    WrittenQuantity maxSpeed,
    String controllerVersion,
    List<String> confirmed) {
  WrittenMachine written() {
    return new WrittenMachine(
        name,
        source,
        wavelength,
        ratedPower,
        motion,
        regime,
        gated,
        pulseControl,
        lens,
        beamDiameter,
        maxSpeed,
        controllerVersion,
        confirmed);
  }
}

package club.emberwell.bench;

import club.emberwell.quantity.WrittenQuantity;
import java.util.List;

/**
 * A machine exactly as its owner described it; null = not given.
 *
 * @param confirmed pointers of implausible values the owner said are meant
 */
public record WrittenMachine(
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
    List<String> confirmed) {}

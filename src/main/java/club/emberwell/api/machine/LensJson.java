package club.emberwell.api.machine;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.dose.FocusedSpot;
import club.emberwell.laser.dose.FocusedSpot.Lens;
import club.emberwell.quantity.QuantityKind;
import java.util.List;
import java.util.stream.Stream;

/**
 * A lens that machines with such a source often have.
 *
 * @param beamDiameter at focus; calculated, not measured
 */
record LensJson(
    LaserSource source, QuantityJson lens, QuantityJson inputBeam, QuantityJson beamDiameter) {

  static List<LensJson> all() {
    return Stream.of(LaserSource.values())
        .flatMap(source -> FocusedSpot.usual(source).stream().map(lens -> of(source, lens)))
        .toList();
  }

  private static LensJson of(LaserSource source, Lens lens) {
    return new LensJson(
        source,
        QuantityJson.of(QuantityKind.FOCAL_LENGTH, lens.focalMm(), null),
        QuantityJson.of(QuantityKind.LENGTH, lens.inputMm(), null),
        QuantityJson.of(
            QuantityKind.BEAM_DIAMETER,
            FocusedSpot.um(source, source.usualNm(), lens).orElseThrow(),
            null));
  }
}

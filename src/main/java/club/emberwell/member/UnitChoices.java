package club.emberwell.member;

import club.emberwell.quantity.Dimension;
import club.emberwell.quantity.UnitPreferences;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The units a member can choose, by dimension. */
final class UnitChoices {
  private UnitChoices() {}

  /** A dimension by its name in the API: {@code speed}, {@code lineSpacing}, or the enum's own. */
  static Optional<Dimension> dimension(String name) {
    String folded = name.replace("_", "");
    return Arrays.stream(Dimension.values())
        .filter(d -> d.name().replace("_", "").equalsIgnoreCase(folded))
        .findFirst();
  }

  /** UCUM codes, the canonical one first. */
  static List<String> of(Dimension dimension) {
    return switch (dimension) {
      case SPEED -> List.of("mm/s", "mm/min", "m/min", "[in_i]/s", "[in_i]/min");
      case LINE_SPACING -> List.of("mm", "um", "/[in_i]", "/cm", "/mm", "[in_i]");
      case THICKNESS, FOCUS_OFFSET, FOCAL_LENGTH -> List.of("mm", "[in_i]");
      case REPETITION_RATE -> List.of("kHz", "Hz", "MHz");
      case PULSE_DURATION -> List.of("ns", "us", "ms", "ps", "fs");
      case BEAM_DIAMETER -> List.of("um", "mm");
      case AREAL_DOSE -> List.of("J/mm2", "J/cm2");
      case LINE_DOSE -> List.of("J/mm", "J/cm");
      default -> List.of(dimension.canonicalUnit());
    };
  }

  /** Preferences from their stored form; what is no longer offered falls back to canonical. */
  static UnitPreferences stored(Map<String, String> units) {
    Map<Dimension, String> known = new EnumMap<>(Dimension.class);
    units.forEach((name, code) -> dimension(name).ifPresent(d -> known.put(d, code)));
    return new UnitPreferences(known);
  }
}

package club.emberwell.web.bench;

import club.emberwell.bench.Machine;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.eyewear.Glasses;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.web.trial.TrialText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/**
 * A machine as its owner sees it.
 *
 * @param laser in one line
 * @param facts what else is known, each with its value in the reader's units
 * @param eyes the worst news of the owner's glasses for it
 * @param factor how it stands to the machines of others, or null
 */
record MachineCard(
    UUID id, String name, String laser, List<Fact> facts, String eyes, String factor) {
  /** Something known of a machine. */
  record Fact(String label, String value) {}

  static MachineCard of(
      Machine machine, UnitPreferences reader, List<Glasses> pairs, Optional<String> factor) {
    Laser laser = machine.laser();
    List<Fact> facts = new ArrayList<>();
    if (machine.model() != null) {
      facts.add(new Fact("Model", machine.model()));
    }
    facts.add(new Fact("Beam", light(machine)));
    add(facts, "Lens", laser.lensFocalMm(), QuantityKind.FOCAL_LENGTH, reader);
    add(
        facts,
        machine.isSpotCalculated() ? "Spot size at focus (calculated)" : "Spot size at focus",
        laser.beamDiameterUm(),
        QuantityKind.BEAM_DIAMETER,
        reader);
    add(facts, "Beam before the lens", machine.inputBeamMm(), QuantityKind.LENGTH, reader);
    add(facts, "Divergence", machine.divergenceMrad(), QuantityKind.DIVERGENCE, reader);
    add(facts, "Maximum speed", laser.maxSpeedMmS(), QuantityKind.SPEED, reader);
    if (machine.housing() != null) {
      facts.add(new Fact("Housing", machine.housing().label()));
    }
    if (machine.controllerVersion() != null) {
      facts.add(new Fact("Firmware or software", machine.controllerVersion()));
    }
    return new MachineCard(
        machine.id(),
        machine.name(),
        TrialText.laser(laser, reader),
        List.copyOf(facts),
        EyeProtection.of(machine, pairs, reader.style()).worst(),
        factor.orElse(null));
  }

  private static String light(Machine machine) {
    String light = machine.laser().regime().label();
    if (machine.laser().gated()) {
      light += ", power is pulsed (PWM)";
    }
    return machine.pulseControl() == null
        ? light
        : light + "; " + machine.pulseControl().label().toLowerCase(Locale.ROOT);
  }

  private static void add(
      List<Fact> facts,
      String label,
      Double value,
      QuantityKind dimension,
      UnitPreferences reader) {
    if (value != null) {
      facts.add(new Fact(label, QuantityPrinter.print(value, dimension, reader)));
    }
  }
}

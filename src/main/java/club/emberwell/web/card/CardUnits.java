package club.emberwell.web.card;

import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitChoice;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The units of somebody without an account, chosen on the card itself and told by its address. */
final class CardUnits {
  /** What one chooses for which quantities. */
  private enum Choice {
    SPEED("speed", "Speed", List.of(QuantityKind.SPEED)),
    SPACING("spacing", "Line spacing", List.of(QuantityKind.LINE_SPACING)),
    LENGTH(
        "length",
        "Lengths",
        List.of(QuantityKind.LENGTH, QuantityKind.THICKNESS, QuantityKind.FOCUS_OFFSET));

    private final String name;
    private final String label;
    private final List<QuantityKind> kinds;

    Choice(String name, String label, List<QuantityKind> kinds) {
      this.name = name;
      this.label = label;
      this.kinds = kinds;
    }

    /** What all of them may be shown in. */
    private List<UnitChoice> units() {
      return UnitPreferences.choices(kinds.get(0)).stream()
          .filter(unit -> kinds.stream().allMatch(k -> UnitPreferences.isChoice(k, unit.code())))
          .toList();
    }
  }

  private CardUnits() {}

  /** Metric but for what the address names; what it names wrongly is metric too. */
  static UnitPreferences of(MultivaluedMap<String, String> asked) {
    UnitPreferences units = UnitPreferences.metric();
    for (Choice choice : Choice.values()) {
      String code = asked.getFirst(choice.name);
      if (choice.units().stream().anyMatch(unit -> unit.code().equals(code))) {
        for (QuantityKind kind : choice.kinds) {
          units = units.with(kind, code);
        }
      }
    }
    return units;
  }

  /** The choice with what is on. */
  static Form form(UnitPreferences now) {
    Form form = new Form();
    Map<String, String> on = new LinkedHashMap<>();
    for (Choice choice : Choice.values()) {
      form.add(
          Field.of(choice.name, choice.label)
              .choices(choice.units(), UnitChoice::code, UnitChoice::label)
              .folded());
      on.put(choice.name, now.unit(choice.kinds.get(0)).code());
    }
    return form.fill(on);
  }
}

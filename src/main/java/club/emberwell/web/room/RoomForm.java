package club.emberwell.web.room;

import club.emberwell.bench.Machine;
import club.emberwell.laser.safety.Ventilation.Carried;
import club.emberwell.remark.EntryRefused;
import club.emberwell.room.RoomCheck;
import club.emberwell.room.RoomLimits;
import club.emberwell.room.WrittenRoom;
import club.emberwell.room.WrittenRoom.Air;
import club.emberwell.room.WrittenRoom.Check;
import club.emberwell.room.WrittenRoom.Size;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/** The fields of a room, from and to what its owner wrote. */
final class RoomForm {
  /** Digits of a number of days and some room to see a slip. */
  private static final int DIGITS = 8;

  private RoomForm() {}

  /**
   * @param id of a new room, so that sending twice makes one; null for one that exists
   * @param machines that may stand in it
   */
  static Form of(UUID id, List<Machine> machines) {
    Form form = new Form().atField();
    form.add(Field.of("id", "Id").hidden().value(Objects.toString(id, "")));
    form.add(
        Field.of("name", "Name").hint("Such as Garage.").maxLength(RoomLimits.NAME).required());
    air(form);
    form.add(
        Field.of("machines", "Machines in this room")
            .choices(machines, m -> m.id().toString(), Machine::name)
            .several());
    for (RoomCheck check : RoomCheck.values()) {
      checks(form, check);
    }
    form.add(
        Field.of("lines", "Lines of your own before a job")
            .hint("One a line. Each job card of this room has them below the lines of every card.")
            .lines()
            .maxLength(RoomLimits.LINES * (RoomLimits.LINE + 1)));
    form.named(RoomForm::here);
    form.add(Field.of("notes", "Notes").lines().maxLength(RoomLimits.NOTES));
    return form;
  }

  /** A remark on one line stands at the field that has them all. */
  private static String here(String said) {
    return said.startsWith("lines.") ? "lines" : said;
  }

  private static void air(Form form) {
    form.add(Field.quantity("volume", "Volume of the room", "30 m³, 1000 ft³; or its three sides"));
    form.add(Field.quantity("length", "Length", "4 m, 13 ft"));
    form.add(Field.quantity("width", "Width", "3 m"));
    form.add(Field.quantity("height", "Height", "2.4 m"));
    form.add(
        Field.quantity(
            "flow", "Air flow out", "Measured, not from the fan’s label: 400 m³/h, 235 cfm"));
    form.add(Field.quantity("duct", "Inside diameter of the duct", "100 mm, 4 in"));
    form.add(
        Field.of("carried", "What is in the air")
            .choice("", "not given")
            .choices(Carried.values(), Carried::label)
            .folded());
    form.add(
        Field.quantity("openingWidth", "Opening for fresh air: width", "A gap or grille, 300 mm"));
    form.add(Field.quantity("openingHeight", "Opening for fresh air: height", "200 mm"));
  }

  private static void checks(Form form, RoomCheck check) {
    form.add(
        Field.of(name(check, "here"), check.label())
            .choice("true", "There is one, or it is done")
            .choice("false", "Not here")
            .folded());
    if (check.recurs()) {
      form.add(
          Field.of(name(check, "everyDays"), check.label() + ": days between checks")
              .hint("Empty = %d.".formatted(check.usualDays()))
              .inputMode("numeric")
              .maxLength(DIGITS));
    }
    form.add(
        Field.of(name(check, "lastOn"), check.label() + ": last checked")
            .hint("Year-month-day")
            .type("date"));
  }

  /** Remarks come with the place in the list, and every check has its own. */
  private static String name(RoomCheck check, String part) {
    return "checks." + check.ordinal() + "." + part;
  }

  /**
   * What was typed.
   *
   * @throws EntryRefused for letters where a number should be
   */
  static WrittenRoom written(SentForm sent) {
    WrittenRoom written =
        new WrittenRoom(
            sent.text("name"),
            new Size(
                sent.quantity("volume"),
                sent.quantity("length"),
                sent.quantity("width"),
                sent.quantity("height")),
            new Air(
                sent.quantity("flow"),
                sent.quantity("duct"),
                sent.text("carried"),
                sent.quantity("openingWidth"),
                sent.quantity("openingHeight")),
            sent.all("machines").stream().map(SentForm::readId).filter(Objects::nonNull).toList(),
            checks(sent),
            sent.lines("lines"),
            sent.text("notes"));
    if (!sent.remarks().isEmpty()) {
      throw new EntryRefused(sent.remarks());
    }
    return written;
  }

  private static List<Check> checks(SentForm sent) {
    List<Check> checks = new ArrayList<>();
    for (RoomCheck check : RoomCheck.values()) {
      checks.add(
          new Check(
              check.code(),
              "false".equals(sent.text(name(check, "here"))) ? Boolean.FALSE : null,
              sent.number(name(check, "everyDays")),
              sent.text(name(check, "lastOn"))));
    }
    return checks;
  }

  /** The form with what was written. */
  static Form filled(Form form, WrittenRoom w) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("name", w.name());
    values.put("volume", SentForm.typed(w.size().volume()));
    values.put("length", SentForm.typed(w.size().length()));
    values.put("width", SentForm.typed(w.size().width()));
    values.put("height", SentForm.typed(w.size().height()));
    values.put("flow", SentForm.typed(w.air().flow()));
    values.put("duct", SentForm.typed(w.air().duct()));
    values.put("carried", Objects.toString(w.air().carried(), ""));
    values.put("openingWidth", SentForm.typed(w.air().openingWidth()));
    values.put("openingHeight", SentForm.typed(w.air().openingHeight()));
    values.put("lines", w.lines() == null ? "" : String.join("\n", w.lines()));
    values.put("notes", w.notes());
    for (RoomCheck check : RoomCheck.values()) {
      w.checks().stream()
          .filter(one -> check.code().equals(one.check()))
          .forEach(one -> fill(values, check, one));
    }
    form.fill(values);
    form.field("machines").chosen(w.machines().stream().map(UUID::toString).toList());
    return form;
  }

  private static void fill(Map<String, String> values, RoomCheck check, Check one) {
    values.put(name(check, "here"), Boolean.FALSE.equals(one.here()) ? "false" : "true");
    values.put(name(check, "everyDays"), Objects.toString(one.everyDays(), ""));
    values.put(name(check, "lastOn"), Objects.toString(one.lastOn(), ""));
  }
}

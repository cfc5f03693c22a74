package club.emberwell.quantity;

import club.emberwell.quantity.Candidates.Amount;
import club.emberwell.quantity.Candidates.Possible;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The last step of reading a text: one number and one unit become a value, what can be meant in one
 * way only too, with a note; anything else a refusal that says what to write instead.
 *
 * @param written the text as typed, kept with whatever comes out
 * @param bounds what lies beyond them cannot be meant
 */
record Settling(QuantityKind kind, String written, Bounds bounds) {

  /** Numbers, at least one, and the spelling of a unit, which may be empty. */
  Reading<Quantity> withUnit(List<Amount> numbers, String unit) {
    if (unit.isEmpty()) {
      List<Amount> offered =
          kind.dimension() == Dimension.RATIO ? PercentText.bare(numbers) : numbers;
      return asked(Candidates.bare(kind, offered), numbers, Optional.of(RemarkId.UNIT_MISSING));
    }
    UnitSpelling.Match match = UnitSpelling.read(kind.dimension(), unit);
    Candidates candidates = new Candidates(numbers, match.codes());
    return switch (match.outcome()) {
      case KNOWN ->
          candidates.isClear()
              ? accepted(candidates)
              : asked(candidates, numbers, Optional.empty());
      case AMBIGUOUS -> asked(candidates, numbers, Optional.of(RemarkId.UNIT_AMBIGUOUS));
      case OTHER_DIMENSION ->
          refused(
              RemarkId.UNIT_OF_OTHER_DIMENSION,
              "\"" + unit + "\" measures something else; a unit like " + usual() + " is needed.",
              List.of());
      case UNKNOWN ->
          refused(
              RemarkId.UNIT_UNKNOWN,
              "\"" + unit + "\" is no unit known here; one would be " + usual() + ".",
              List.of());
    };
  }

  /** One number with one unit. */
  Reading<Quantity> accepted(Candidates clear) {
    return CanonicalRules.settle(
        kind,
        written,
        clear.numbers().get(0).value(),
        UcumCodes.tabled(clear.codes().get(0), kind));
  }

  /**
   * The number, the unit or both are in question; every remark carries all readings. Where one only
   * is possible, nobody is asked.
   */
  Reading<Quantity> asked(Candidates candidates, List<Amount> numbers, Optional<RemarkId> unitId) {
    List<Possible> possible = candidates.possible(kind, bounds);
    if (possible.isEmpty()) {
      possible = candidates.possible(kind, Bounds.NONE);
    }
    List<String> readings = possible.stream().map(Possible::text).toList();
    if (possible.size() == 1) {
      String text = readings.get(0);
      boolean bare = unitId.filter(id -> id == RemarkId.UNIT_MISSING).isPresent();
      RemarkId id = bare ? RemarkId.UNIT_ASSUMED : RemarkId.READ_AS;
      return taken(possible.get(0).quantity(), note(id, "Read as " + text + ".", text));
    }
    List<Remark> remarks = new ArrayList<>();
    if (numbers.size() > 1) {
      boolean fraction = numbers.stream().anyMatch(n -> n.spelled().contains("/"));
      remarks.add(
          fraction
              ? question(
                  RemarkId.FRACTION_AMBIGUOUS, "Is a space missing in this fraction?", readings)
              : question(
                  RemarkId.NUMBER_AMBIGUOUS,
                  "Is the mark before the three digits a decimal mark or a thousands mark?",
                  readings));
    }
    unitId.ifPresent(
        id ->
            remarks.add(
                question(
                    id,
                    id == RemarkId.UNIT_MISSING
                        ? "A unit is needed, such as " + usual() + "."
                        : "Do you mean this unit?",
                    readings)));
    return Reading.refused(written, remarks.toArray(Remark[]::new));
  }

  /** What was read, kept with the whole text as typed. */
  Reading<Quantity> taken(Quantity read, Remark note) {
    return Reading.of(written, new Quantity(kind, read.value(), written), note);
  }

  /**
   * @param text what was read, itself read when typed
   */
  static Remark note(RemarkId id, String detail, String text) {
    return new Remark(id, Severity.INFO, "", detail, List.of(text));
  }

  Reading<Quantity> notANumber() {
    return refused(
        RemarkId.NOT_A_NUMBER,
        "This does not start with a number that can be read, such as 12.5 " + usual() + ".",
        List.of());
  }

  Reading<Quantity> refused(RemarkId id, String detail, List<String> readings) {
    return Reading.refused(written, question(id, detail, readings));
  }

  private static Remark question(RemarkId id, String detail, List<String> readings) {
    return new Remark(id, Severity.ERROR, "", detail, readings);
  }

  private String usual() {
    return UnitTable.choices(kind).get(0).label();
  }
}

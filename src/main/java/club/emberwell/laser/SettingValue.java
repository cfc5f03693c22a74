package club.emberwell.laser;

import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.RemarkId;
import java.util.List;
import java.util.Optional;

/**
 * What may be given for a setting.
 *
 * @param bases the kinds of quantity it may be given in: one, but for power that is a share of the
 *     rated power or an absolute one; empty where it is no quantity
 * @param bounds of a whole number, null where it is none
 * @param choices of a flag or a choice, in the order they are offered; else empty
 * @param usual what warns of a slip, null = nothing simple does
 * @param isSearchable whether a search can be limited by it
 */
public record SettingValue(
    Shape shape,
    List<Basis> bases,
    Bounds bounds,
    List<Choice> choices,
    Usual usual,
    boolean isSearchable) {
  /** How it is written and kept. */
  public enum Shape {
    /** A number with its unit; kept in the canonical unit. */
    QUANTITY,
    /** A whole number. */
    COUNT,
    /** True or false. */
    FLAG,
    /** One of some words. */
    CHOICE
  }

  /**
   * One kind of quantity with its bounds: what lies beyond cannot be meant.
   *
   * @param code under which its canonical numbers are kept, null = the setting's
   */
  public record Basis(String code, QuantityKind kind, Bounds bounds) {}

  /**
   * One of the values of a flag or a choice.
   *
   * @param code word in the API
   * @param label word on pages
   * @param inLine words in a line about a whole trial, null = not worth a mention
   */
  public record Choice(String code, String label, String inLine) {}

  /** Outside these bounds a value is possible but unlikely, and remarked on. */
  public record Usual(RemarkId id, Bounds bounds, String unit) {}

  static SettingValue quantity(QuantityKind kind, double min, double max) {
    List<Basis> only = List.of(new Basis(null, kind, new Bounds(min, max)));
    return new SettingValue(Shape.QUANTITY, only, null, List.of(), null, false);
  }

  static SettingValue either(Basis one, Basis other) {
    return new SettingValue(Shape.QUANTITY, List.of(one, other), null, List.of(), null, false);
  }

  static SettingValue count(int min, int max) {
    return new SettingValue(Shape.COUNT, List.of(), new Bounds(min, max), List.of(), null, false);
  }

  static SettingValue flag(Choice yes, Choice no) {
    return new SettingValue(Shape.FLAG, List.of(), null, List.of(yes, no), null, false);
  }

  static SettingValue choice(List<Choice> choices) {
    return new SettingValue(Shape.CHOICE, List.of(), null, List.copyOf(choices), null, false);
  }

  SettingValue usual(RemarkId id, double min, double max, String unit) {
    Usual some = new Usual(id, new Bounds(min, max), unit);
    return new SettingValue(shape, bases, bounds, choices, some, isSearchable);
  }

  SettingValue searchable() {
    return new SettingValue(shape, bases, bounds, choices, usual, true);
  }

  /** True where it can be compared as a number. */
  public boolean isNumber() {
    return shape == Shape.QUANTITY || shape == Shape.COUNT;
  }

  /** The one kind of quantity; empty where there is none or a choice of two. */
  public Optional<QuantityKind> kind() {
    return bases.size() == 1 ? Optional.of(bases.get(0).kind()) : Optional.empty();
  }

  /** Which of the bases has this kind of quantity. */
  Basis basis(QuantityKind kind) {
    return bases.stream().filter(basis -> basis.kind() == kind).findFirst().orElseThrow();
  }

  /** What a flag or a choice says with this value; empty for anything else. */
  public Optional<Choice> choice(Object value) {
    return choices.stream().filter(choice -> choice.code().equals(String.valueOf(value))).findAny();
  }
}

package club.emberwell.exchange.open;

import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.Coded;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A column of the table of trials: where its cells come from, and what its schema says.
 *
 * @param name in the head of the table
 * @param title what people call it
 * @param type of Table Schema
 * @param unit UCUM; null where it is no quantity
 * @param codes all values there are; empty where they are not counted
 * @param isRequired whether every trial has it
 */
record Column(
    String name,
    String title,
    String type,
    String unit,
    List<String> codes,
    boolean isRequired,
    Function<TrialRow, Object> cell) {
  static final String TEXT = "string";
  static final String NUMBER = "number";
  static final String WHOLE = "integer";

  static Column text(String name, String title, Function<TrialRow, Object> cell) {
    return of(name, title, TEXT, cell);
  }

  static Column whole(String name, String title, Function<TrialRow, Object> cell) {
    return of(name, title, WHOLE, cell);
  }

  static Column of(String name, String title, String type, Function<TrialRow, Object> cell) {
    return new Column(name, title, type, null, List.of(), false, cell);
  }

  static Column quantity(
      String name, String title, QuantityKind kind, Function<TrialRow, Object> cell) {
    return number(name, title, kind.canonicalUnit(), cell);
  }

  /**
   * @param unit UCUM, empty for a bare number
   */
  static Column number(String name, String title, String unit, Function<TrialRow, Object> cell) {
    String ucum = unit.isEmpty() ? "1" : unit;
    return new Column(name, title, NUMBER, ucum, List.of(), false, cell);
  }

  static <E extends Enum<E> & Coded> Column code(
      String name, String title, Class<E> words, Function<TrialRow, E> cell) {
    List<String> codes = Stream.of(words.getEnumConstants()).map(Coded::code).toList();
    return new Column(
        name,
        title,
        TEXT,
        null,
        codes,
        true,
        row -> {
          E word = cell.apply(row);
          return word == null ? null : word.code();
        });
  }

  Column choices(List<String> all) {
    return new Column(name, title, type, unit, List.copyOf(all), isRequired, cell);
  }

  Column required() {
    return new Column(name, title, type, unit, codes, true, cell);
  }
}

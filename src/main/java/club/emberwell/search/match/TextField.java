package club.emberwell.search.match;

import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where a word can be found.
 *
 * @param field in the index
 * @param weight of a find there
 */
public record TextField(String field, float weight) {
  public static final TextField LASER = new TextField("t_laser", 2);
  public static final TextField MACHINE = new TextField("t_machine", 1.5f);
  public static final TextField MEMBER = new TextField("t_member", 1.5f);

  /** What was worked on. */
  static final List<TextField> SUBJECT =
      WorkProperty.of(Shape.WORD).stream().map(TextField::of).toList();

  private static final List<TextField> ALL =
      Stream.concat(
              Stream.of(WorkProperty.values())
                  .map(TextField::of)
                  .filter(field -> field.weight() > 0),
              Stream.of(LASER, MACHINE, MEMBER))
          .toList();

  /** What a report says of its work. */
  public static TextField of(WorkProperty property) {
    return new TextField("t_" + property.code(), property.value().weight());
  }

  public static List<TextField> all() {
    return ALL;
  }
}

package club.emberwell.report.reading;

import static club.emberwell.report.reading.WorkForm.asked;
import static club.emberwell.report.reading.WorkValue.lines;
import static club.emberwell.report.reading.WorkValue.quantity;
import static club.emberwell.report.reading.WorkValue.text;
import static club.emberwell.report.reading.WorkValue.word;

import club.emberwell.catalog.TermKind;
import club.emberwell.laser.Process;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.remark.Coded;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.WorkForm.Group;
import club.emberwell.report.reading.WorkValue.Shape;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * All the program knows of each thing a report says of its work beside the process: reading, forms,
 * pages, JSON, repeats, the index, limits and columns go over these, in this order.
 */
public enum WorkProperty implements Coded {
  MATERIAL(
      "material",
      "Material",
      word(TermKind.MATERIAL).weighing(4),
      asked(Group.PIECE, null).needed()),
  COATING(
      "coating",
      "Coating",
      word(TermKind.COATING).weighing(3),
      asked(Group.FINISH, "Powder coat, anodised, paint …").ofSurface()),
  COLOUR(
      "colour",
      "Colour",
      word(TermKind.COLOUR).weighing(3),
      asked(Group.FINISH, "A word or a hex colour.").as("Colour of the coating").ofSurface()),
  THICKNESS(
      "thickness",
      "Thickness",
      quantity(QuantityKind.THICKNESS, 0.000_1, 10_000),
      asked(Group.OF_PROCESS, "3 mm, 1/8 in; asked for at cuts")
          .missedAt(
              Process.CUT,
              RemarkId.THICKNESS_MISSING,
              "How thick was the piece? Without its thickness a cut helps others little.")),
  RESULT_COLOUR(
      "resultColour",
      "Resulting colour",
      word(TermKind.COLOUR).weighing(3),
      asked(Group.OF_PROCESS, "Gold, blue, black; asked for at colour marks")
          .once()
          .missedAt(
              Process.COLOUR_MARKING,
              RemarkId.RESULT_COLOUR_MISSING,
              "Which colour did it become? Without it a colour mark helps others little.")),
  NOTES("notes", "Notes", lines(4000).weighing(1), asked(Group.NOTES, null).once()),
  LOT(
      "lot",
      "Lot",
      text(80).weighing(2),
      asked(Group.BESIDE, null).as("Batch (lot) of the supplier").once()),
  SUPPLIER(
      "supplier",
      "Supplier",
      text(80).weighing(2),
      asked(Group.BESIDE, null).as("Supplier of the piece").once()),
  CONTROLLER_VERSION(
      "controllerVersion",
      "Firmware version",
      text(80).weighing(2),
      asked(Group.BESIDE, null).as("Firmware or software version"));

  private final String code;
  private final String label;
  private final WorkValue value;
  private final WorkForm form;

  WorkProperty(String code, String label, WorkValue value, WorkForm form) {
    this.code = code;
    this.label = label;
    this.value = value;
    this.form = form;
  }

  /** Its word in the API and in forms. */
  @Override
  public String code() {
    return code;
  }

  /** Its name on pages. */
  public String label() {
    return label;
  }

  /** What may be given. */
  public WorkValue value() {
    return value;
  }

  /** How a member is asked for it. */
  public WorkForm form() {
    return form;
  }

  /** A word of it among others about the same piece: "titanium", "gold mark". */
  public String among(String word) {
    return this == RESULT_COLOUR ? word.toLowerCase(Locale.ROOT) + " mark" : word;
  }

  /** The question on the form. */
  public String question() {
    return form.question() == null ? label : form.question();
  }

  /** The properties of a shape, in their order. */
  public static List<WorkProperty> of(Shape shape) {
    return Stream.of(values()).filter(property -> property.value.shape() == shape).toList();
  }
}

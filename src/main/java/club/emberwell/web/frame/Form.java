package club.emberwell.web.frame;

import club.emberwell.remark.Remark;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The fields of one page's form with the remarks spread over them; nothing typed is ever lost. */
public final class Form {
  private final Map<String, Field> fields = new LinkedHashMap<>();
  private final List<Line> summary = new ArrayList<>();
  private boolean needsConfirmation;

  /** One line of the error summary; target is the id to jump to or null. */
  public record Line(String text, String target) {}

  public Form add(Field field) {
    fields.put(field.getName(), field);
    return this;
  }

  /** The field by its dotted name; asking for one that the form lacks is a defect of the page. */
  public Field field(String name) {
    Field field = fields.get(name);
    if (field == null) {
      throw new IllegalArgumentException("the form has no field " + name);
    }
    return field;
  }

  /** The field by its dotted name, if the form has it. */
  public Optional<Field> find(String name) {
    return Optional.ofNullable(fields.get(name));
  }

  /** Spreads remarks over the fields; those without a field here stand in the summary alone. */
  public Form remarks(List<Remark> remarks) {
    for (Remark remark : remarks) {
      Field field = fields.get(name(remark.field()));
      if (field != null) {
        field.remark(remark);
      }
      switch (remark.severity()) {
        case ERROR ->
            summary.add(new Line(line(field, remark), field == null ? null : field.getName()));
        case WARNING -> needsConfirmation = true;
        default -> {
          // information is for the report's own page
        }
      }
    }
    return this;
  }

  private static String line(Field field, Remark remark) {
    return field == null ? remark.detail() : field.getLabel() + ": " + remark.detail();
  }

  private static String name(String pointer) {
    return pointer.isEmpty() ? "" : pointer.substring(1).replace('/', '.');
  }

  public List<Line> getSummary() {
    return summary;
  }

  public boolean isFailed() {
    return !summary.isEmpty();
  }

  /** Warnings only: the page asks "is this meant?" and offers to save as it is. */
  public boolean isNeedsConfirmation() {
    return needsConfirmation && !isFailed();
  }
}

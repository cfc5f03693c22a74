package club.emberwell.api.view;

import club.emberwell.entry.FieldChange;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one field said before and after; left out where it said nothing.
 *
 * @param pointer of the field, as in problems and remarks
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FieldChangeJson(String pointer, @Nullable String before, @Nullable String after) {
  public static List<FieldChangeJson> all(List<FieldChange> changes) {
    return changes.stream().map(FieldChangeJson::of).toList();
  }

  private static FieldChangeJson of(FieldChange change) {
    String field = change.field();
    String pointer = field.startsWith("/") ? field : "/" + field.replace('.', '/');
    return new FieldChangeJson(pointer, change.before(), change.after());
  }
}

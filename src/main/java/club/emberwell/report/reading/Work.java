package club.emberwell.report.reading;

import club.emberwell.laser.Process;
import club.emberwell.report.reading.WorkValue.Shape;
import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What was done to what, as read. A value; what is not given is not in it.
 *
 * @param values by their shape a {@link Filed}, a number in the canonical unit or a text
 */
public record Work(Process process, @JsonIgnore Map<WorkProperty, Object> values) {
  public Work {
    Map<WorkProperty, Object> copy = new EnumMap<>(WorkProperty.class);
    values.forEach(
        (property, value) -> {
          if (!Filed.NOTHING.equals(value)) {
            copy.put(property, value);
          }
        });
    values = Collections.unmodifiableMap(copy);
  }

  /** Nothing is known of it but what was done. */
  public static Work of(Process process) {
    return new Work(process, Map.of());
  }

  /** The same but for one value; null = not given. */
  public Work with(WorkProperty property, Object value) {
    Map<WorkProperty, Object> copy = new EnumMap<>(WorkProperty.class);
    copy.putAll(values);
    copy.put(property, value == null ? Filed.NOTHING : value);
    return new Work(process, copy);
  }

  /** Whether nothing is known of it. */
  boolean isSilentOf(WorkProperty property) {
    return !values.containsKey(property);
  }

  /** What a word was filed as; never null. */
  public Filed word(WorkProperty property) {
    return (Filed) values.getOrDefault(property, Filed.NOTHING);
  }

  /** A quantity in its canonical unit; null where it is not given. */
  public Double number(WorkProperty property) {
    return (Double) values.get(property);
  }

  /** A text; null where it is not given. */
  public String text(WorkProperty property) {
    return (String) values.get(property);
  }

  /** The words its author used of it, filed or not; null where there are none. */
  public String typed(WorkProperty property) {
    return values.get(property) instanceof Filed filed ? filed.written() : text(property);
  }

  /**
   * What lists call it: the words its author used of it; of a slug, as programs write them, the
   * words in it.
   */
  public String called() {
    return WorkProperty.of(Shape.WORD).stream()
        .filter(values::containsKey)
        .map(property -> property.among(word(property).said()))
        .collect(Collectors.joining(", "));
  }

  /** The values under their words in the API. */
  @JsonAnyGetter
  public Map<String, Object> byCode() {
    Map<String, Object> byCode = new LinkedHashMap<>();
    values.forEach((property, value) -> byCode.put(property.code(), value));
    return byCode;
  }

  public Filed material() {
    return word(WorkProperty.MATERIAL);
  }

  public Filed coating() {
    return word(WorkProperty.COATING);
  }

  /** Of the piece, mm; null = not given. */
  public Double thicknessMm() {
    return number(WorkProperty.THICKNESS);
  }
}

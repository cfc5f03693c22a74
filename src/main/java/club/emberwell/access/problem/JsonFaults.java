package club.emberwell.access.problem;

import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.exc.InputCoercionException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.Collection;
import java.util.Map;
import java.util.stream.Collectors;

/** Says where in the JSON something is wrong, in words without class names. */
public final class JsonFaults {
  private JsonFaults() {}

  /** 400 with a pointer to the field, or the line and column of what is no JSON at all. */
  public static Problem of(JacksonException e) {
    if (e instanceof UnrecognizedPropertyException unknown) {
      return Problems.at(
          ProblemKind.UNKNOWN_FIELD, pointer(unknown), "There is no such field here.");
    }
    if (e instanceof StreamConstraintsException) {
      return Problems.at(
          ProblemKind.INVALID_JSON, "", "The JSON is nested too deep or has too long a value.");
    }
    if (e instanceof MismatchedInputException mismatch) {
      return Problems.at(
          ProblemKind.WRONG_TYPE,
          pointer(mismatch),
          "Here " + expected(mismatch.getTargetType()) + " is expected.");
    }
    if (e instanceof JsonMappingException mapping
        && (mapping.getCause() instanceof InputCoercionException
            || !(mapping.getCause() instanceof JacksonException))) {
      return Problems.at(ProblemKind.WRONG_TYPE, pointer(mapping), "This value cannot be read.");
    }
    return Problems.at(
        ProblemKind.INVALID_JSON, "", "This is not valid JSON" + at(e.getLocation()) + ".");
  }

  private static String pointer(JsonMappingException e) {
    return e.getPath().stream()
        .map(r -> "/" + (r.getFieldName() == null ? r.getIndex() : escaped(r.getFieldName())))
        .collect(Collectors.joining());
  }

  private static String escaped(String name) {
    return name.replace("~", "~0").replace("/", "~1");
  }

  private static String expected(Class<?> type) {
    if (type == null || type == Object.class) {
      return "another kind of value";
    }
    if (CharSequence.class.isAssignableFrom(type)) {
      return "a text";
    }
    if (type == boolean.class || type == Boolean.class) {
      return "true or false";
    }
    if (type.isPrimitive() || Number.class.isAssignableFrom(type)) {
      return "a number";
    }
    if (type.isArray() || Collection.class.isAssignableFrom(type)) {
      return "a list";
    }
    if (type == java.util.UUID.class) {
      return "an id (UUID)";
    }
    if (type == WrittenQuantity.class) {
      return "a text with its unit or {value, unit}";
    }
    if (type.isEnum()) {
      return "one of the known words";
    }
    return Map.class.isAssignableFrom(type) || type.isRecord()
        ? "an object"
        : "another kind of value";
  }

  private static String at(JsonLocation place) {
    return place == null || place.getLineNr() < 1
        ? ""
        : ": line " + place.getLineNr() + ", column " + place.getColumnNr();
  }
}

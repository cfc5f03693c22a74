package club.emberwell.bench;

import club.emberwell.laser.Codes;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Reads the fields of one entry and collects what was noticed. Nothing throws for bad input: a
 * field at fault is null, with an error at its pointer.
 */
public final class FieldReader {
  private final NumberStyle style;
  private final List<Remark> remarks = new ArrayList<>();

  public FieldReader(NumberStyle style) {
    this.style = style;
  }

  public List<Remark> remarks() {
    return List.copyOf(remarks);
  }

  public void add(Remark remark) {
    remarks.add(remark);
  }

  public boolean failed() {
    return remarks.stream().anyMatch(Remark::isError);
  }

  /** Notes that a field is needed when it is not there. */
  public <T> T required(String pointer, T given) {
    if (given == null || given instanceof String text && text.isBlank()) {
      add(Remark.error(RemarkId.REQUIRED, pointer, "Please fill in this field."));
    }
    return given;
  }

  /** The text without space around it; null where nothing is left or it cannot be kept. */
  public String text(String pointer, String given, int most, boolean lines) {
    if (given == null || given.isBlank()) {
      return null;
    }
    if (given.codePointCount(0, given.length()) > most) {
      String detail = "At most " + most + " characters fit here.";
      add(Remark.error(RemarkId.TEXT_TOO_LONG, pointer, detail));
      return null;
    }
    if (!clean(given, lines)) {
      String detail = "This text has characters that cannot be shown.";
      add(Remark.error(RemarkId.TEXT_UNREADABLE, pointer, detail));
      return null;
    }
    return given.strip();
  }

  /**
   * Lines of one's own, without the empty ones; remarks say which line they are about.
   *
   * @param many that fit
   * @param most characters of one
   */
  public List<String> lines(String pointer, List<String> given, int many, int most) {
    List<String> kept = new ArrayList<>();
    for (int i = 0; given != null && i < given.size(); i++) {
      FieldReader one = new FieldReader(style);
      String line = one.text(pointer + "/" + i, given.get(i), most, false);
      String which = "Line %d: ".formatted(i + 1);
      one.remarks().forEach(remark -> add(remark.with(which + remark.detail(), List.of())));
      if (line != null) {
        kept.add(line);
      }
    }
    if (kept.size() > many) {
      add(Remark.error(RemarkId.TOO_MANY, pointer, "At most %d lines fit here.".formatted(many)));
    }
    return kept;
  }

  // Control characters, halves of a character and marks that turn the order of text around.
  private static boolean clean(String text, boolean lines) {
    return text.codePoints()
        .allMatch(
            c ->
                switch (Character.getType(c)) {
                  case Character.CONTROL -> lines && (c == '\n' || c == '\r' || c == '\t');
                  case Character.SURROGATE, Character.UNASSIGNED, Character.PRIVATE_USE -> false;
                  default -> !(c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069);
                });
  }

  /** One of an enumeration's words; null where not given or unknown. */
  public <E extends Enum<E>> E choice(
      String pointer,
      String given,
      Function<String, Optional<E>> find,
      E[] all,
      Function<E, String> code) {
    if (given == null || given.isBlank()) {
      return null;
    }
    Optional<E> found = find.apply(given);
    if (found.isEmpty()) {
      add(unknown(pointer, Arrays.stream(all).map(code).toList()));
    }
    return found.orElse(null);
  }

  /**
   * One of some words, found as a person may case or join them; null where not given or unknown.
   */
  public String choice(String pointer, String given, List<String> words) {
    if (given == null || given.isBlank()) {
      return null;
    }
    Optional<String> found = Codes.find(words, given);
    if (found.isEmpty()) {
      add(unknown(pointer, words));
    }
    return found.orElse(null);
  }

  private static Remark unknown(String pointer, List<String> words) {
    return Remark.error(
        RemarkId.CHOICE_UNKNOWN, pointer, "Choose one of: " + String.join(", ", words) + ".");
  }

  /** The value in the dimension's canonical unit; null where not given or at fault. */
  public Double quantity(
      String pointer, QuantityKind dimension, WrittenQuantity given, Bounds bounds) {
    if (isAbsent(given)) {
      return null;
    }
    return take(pointer, read(dimension, given, bounds), bounds);
  }

  /**
   * The reading alone, without any remark noted.
   *
   * @param bounds what lies beyond them is not asked about
   */
  public Reading<Quantity> read(QuantityKind dimension, WrittenQuantity given, Bounds bounds) {
    return given.text() != null
        ? QuantityReader.read(dimension, given.text(), style, bounds)
        : QuantityReader.read(dimension, given.value(), given.unit());
  }

  /** Notes a reading's remarks and answers its value if it lies within bounds. */
  public Double take(String pointer, Reading<Quantity> reading, Bounds bounds) {
    reading.at(pointer).remarks().forEach(this::add);
    if (reading.value().isEmpty()) {
      return null;
    }
    Quantity quantity = reading.value().get();
    double value = quantity.doubleValue();
    if (!bounds.hold(value)) {
      String unit = quantity.kind().canonicalUnit();
      String detail =
          "%s %s is not between %s and %s %s."
              .formatted(plain(value), unit, plain(bounds.min()), plain(bounds.max()), unit);
      add(Remark.error(RemarkId.OUT_OF_RANGE, pointer, detail));
      return null;
    }
    return value;
  }

  /** Empty fields of a form count as not given. */
  public static boolean isAbsent(WrittenQuantity given) {
    return given == null || given.text() != null && given.text().isBlank();
  }

  private static String plain(double value) {
    return new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros().toPlainString();
  }
}

package club.emberwell.search.query;

import club.emberwell.catalog.Match;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.Effect;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.PowerClass;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.search.query.Facet.Pictured;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The values a facet can have and what people call them. */
public final class FacetValues {
  private static final Map<Facet, Map<String, String>> FIXED =
      Map.of(
          Facet.SOURCE, labels(LaserSource.values(), LaserSource::code, LaserSource::label),
          Facet.POWER_CLASS, labels(PowerClass.values(), PowerClass::code, PowerClass::label),
          Facet.BAND, labels(WavelengthBand.values(), WavelengthBand::code, WavelengthBand::label),
          Facet.REGIME, labels(Regime.values(), Regime::code, Regime::label),
          Facet.PROCESS, labels(Process.values(), Process::code, Process::label),
          Facet.EFFECT, labels(Effect.values(), Effect::code, Effect::label),
          Facet.MOTION, labels(Motion.values(), Motion::code, Motion::label),
          Facet.THICKNESS, thicknesses(),
          Facet.PHOTO, labels(Pictured.values(), one -> one.code, one -> one.label));

  private static final String THINNEST = ThicknessClass.all().get(0).code();

  /** Ends a value that means a branch of a tree itself, without what grows on it. */
  private static final String ITSELF = ".itself";

  private FacetValues() {}

  /** The value that means a word itself, without those below it. */
  public static String itself(String slug) {
    return slug + ITSELF;
  }

  /** The word in such a value; empty where a value means everything below it too. */
  public static Optional<String> itselfOf(String value) {
    return value.endsWith(ITSELF)
        ? Optional.of(value.substring(0, value.length() - ITSELF.length()))
        : Optional.empty();
  }

  private static Map<String, String> thicknesses() {
    Map<String, String> found = new LinkedHashMap<>();
    for (ThicknessClass one : ThicknessClass.all()) {
      boolean open = one.nominalMm() == null;
      found.put(one.code(), open ? one.label() : one.label() + " (" + one.covers() + ")");
    }
    return found;
  }

  private static <E> Map<String, String> labels(
      E[] values, Function<E, String> code, Function<E, String> label) {
    Map<String, String> found = new LinkedHashMap<>();
    for (E value : values) {
      found.put(code.apply(value), label.apply(value));
    }
    return found;
  }

  /** Codes and labels in order; empty where the values are open or form a tree. */
  public static Map<String, String> fixed(Facet facet) {
    return FIXED.getOrDefault(facet, Map.of());
  }

  /** True where the values are few and known beforehand, or form a tree. */
  public static boolean isClosed(Facet facet) {
    return facet.vocabulary().isPresent() || !fixed(facet).isEmpty();
  }

  public static String label(Facet facet, String value, Vocabulary vocabulary) {
    if (value.equals(Facet.NOT_GIVEN)) {
      return "Not given";
    }
    if (value.equals(Facet.NOT_FILED)) {
      return "Not filed yet";
    }
    Optional<TermKind> kind = facet.vocabulary();
    if (kind.isPresent()) {
      return itselfOf(value)
          .map(slug -> label(facet, slug, vocabulary) + ", no kind stated")
          .orElseGet(() -> vocabulary.successor(kind.get(), value).map(Term::label).orElse(value));
    }
    return fixed(facet).getOrDefault(value, value);
  }

  /**
   * The index value that a typed one means: a code, or any spelling of a filed word. Empty where it
   * means nothing or two things.
   */
  static Optional<String> read(Facet facet, String text, Vocabulary vocabulary) {
    String value = text.strip();
    if (value.isEmpty() || value.length() > SearchLimits.VALUE) {
      return Optional.empty();
    }
    if (value.equals(Facet.NOT_GIVEN)) {
      return Optional.of(value);
    }
    Optional<TermKind> kind = facet.vocabulary();
    if (kind.isPresent()) {
      return value.equals(Facet.NOT_FILED)
          ? Optional.of(value)
          : filed(kind.get(), value, vocabulary);
    }
    if (fixed(facet).isEmpty()) {
      return Optional.of(value);
    }
    String code = value.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "-");
    return Optional.of(code)
        .filter(fixed(facet)::containsKey)
        .or(() -> facet == Facet.THICKNESS ? thickness(value) : Optional.empty());
  }

  /** The class of a thickness in any unit; without one where it can be of one class only. */
  private static Optional<String> thickness(String text) {
    List<String> meant = thicknesses(text);
    return meant.size() == 1 ? classOf(meant.get(0)) : classOf(text);
  }

  private static Optional<String> classOf(String text) {
    return QuantityReader.read(QuantityKind.THICKNESS, text, NumberStyle.ANY)
        .value()
        .flatMap(quantity -> ThicknessClass.of(quantity.doubleValue()))
        .map(ThicknessClass::code);
  }

  /** What a thickness may mean that is not clear; nothing thinner than sheets are. */
  static List<String> thicknesses(String text) {
    return QuantityReader.read(QuantityKind.THICKNESS, text).remarks().stream()
        .flatMap(remark -> remark.readings().stream())
        .distinct()
        .filter(reading -> classOf(reading).filter(code -> !code.equals(THINNEST)).isPresent())
        .toList();
  }

  private static Optional<String> filed(TermKind kind, String value, Vocabulary vocabulary) {
    Optional<String> itself = itselfOf(value);
    if (itself.isPresent()) {
      return vocabulary.successor(kind, itself.get()).map(term -> itself(term.slug()));
    }
    return vocabulary
        .successor(kind, value)
        .map(Term::slug)
        .or(
            () -> {
              Match match = vocabulary.resolve(kind, value);
              return match.term().map(Term::slug);
            });
  }
}

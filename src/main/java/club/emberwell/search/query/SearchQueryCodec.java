package club.emberwell.search.query;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.Coded;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Severity;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Parameters of an address to a query and back. Reading never throws: whatever cannot be read is
 * left out and named in a problem, which the API refuses and a page shows. A facet value that means
 * nothing stays chosen, so that nobody sees more than they asked for. Writing gives every state one
 * address.
 */
public final class SearchQueryCodec {
  public static final String TEXT = "q";
  public static final String NEAR = "near";
  public static final String SORT = "sort";
  public static final String PAGE = "page";
  public static final String SIZE = "size";

  private static final RemarkId REVERSED = RemarkId.RANGE_REVERSED;
  private static final RemarkId REPEATED = RemarkId.PARAMETER_REPEATED;

  private final Vocabulary vocabulary;
  private final NumberStyle style;
  private final List<Remark> problems = new ArrayList<>();

  private SearchQueryCodec(Vocabulary vocabulary, NumberStyle style) {
    this.vocabulary = vocabulary;
    this.style = style;
  }

  /**
   * A query and what was wrong with its address.
   *
   * @param problems errors; each one's field is the parameter's name after a slash
   */
  public record Parsed(SearchQuery query, List<Remark> problems) {}

  /**
   * Reads an address by the rules of the API.
   *
   * @param others parameters that belong to somebody else
   */
  public static Parsed read(
      Map<String, List<String>> parameters, Vocabulary vocabulary, Set<String> others) {
    return read(parameters, vocabulary, others, NumberStyle.ANY);
  }

  /** The same for a page, with its reader's way of writing numbers. */
  public static Parsed read(
      Map<String, List<String>> parameters,
      Vocabulary vocabulary,
      Set<String> others,
      NumberStyle style) {
    SearchQueryCodec codec = new SearchQueryCodec(vocabulary, style);
    SearchQuery query = codec.query(parameters, others);
    return new Parsed(query, List.copyOf(codec.problems));
  }

  /** True for a problem of a limit's number or unit, not of the address itself. */
  public static boolean isOfQuantity(Remark problem) {
    return RangeField.all().stream()
            .filter(range -> range.dimension().isPresent())
            .anyMatch(range -> isLimit(range, problem.field().substring(1)))
        && !problem.is(REVERSED)
        && !problem.is(REPEATED);
  }

  private static boolean isLimit(RangeField range, String name) {
    return name.equals(range.minParameter()) || name.equals(range.maxParameter());
  }

  private SearchQuery query(Map<String, List<String>> parameters, Set<String> others) {
    for (String name : parameters.keySet()) {
      if (!others.contains(name) && !isOurs(name)) {
        problem(name, RemarkId.PARAMETER_UNKNOWN, "There is no such parameter.");
      }
    }
    Map<String, List<String>> facets = new LinkedHashMap<>();
    for (Facet facet : Facet.values()) {
      facets.put(facet.code(), chosen(facet, parameters.getOrDefault(facet.code(), List.of())));
    }
    Map<String, SearchQuery.Limits> ranges = new LinkedHashMap<>();
    for (RangeField range : RangeField.all()) {
      Double min = limit(range, range.minParameter(), parameters).orElse(null);
      Double max = limit(range, range.maxParameter(), parameters).orElse(null);
      ranges.put(range.stem(), new SearchQuery.Limits(min, max));
      if (min != null && max != null && min > max) {
        problem(range.minParameter(), REVERSED, "The lower limit is above the upper one.");
      }
    }
    return new SearchQuery(
        text(parameters),
        facets,
        ranges,
        near(parameters),
        sort(parameters),
        number(PAGE, parameters, 0, 0, SearchLimits.PAGE),
        number(SIZE, parameters, SearchLimits.DEFAULT_SIZE, 1, SearchLimits.SIZE));
  }

  private static boolean isOurs(String name) {
    if (Set.of(TEXT, NEAR, SORT, PAGE, SIZE).contains(name)
        || Coded.of(Facet.class, name).isPresent()) {
      return true;
    }
    return RangeField.all().stream().anyMatch(range -> isLimit(range, name));
  }

  private void problem(String parameter, RemarkId id, String detail) {
    problems.add(Remark.error(id, "/" + parameter, detail));
  }

  /** The one value of a parameter; a form sends empty ones for fields nobody filled in. */
  private Optional<String> single(String name, Map<String, List<String>> parameters) {
    List<String> given =
        parameters.getOrDefault(name, List.of()).stream().filter(v -> !v.isBlank()).toList();
    if (given.size() > 1) {
      problem(name, REPEATED, "This parameter is given once.");
    }
    return given.stream().findFirst();
  }

  private String text(Map<String, List<String>> parameters) {
    String text = single(TEXT, parameters).orElse("");
    if (text.length() > SearchLimits.TEXT) {
      problem(
          TEXT,
          RemarkId.TEXT_TOO_LONG,
          "At most " + SearchLimits.TEXT + " characters are looked for.");
      return text.substring(0, SearchLimits.TEXT);
    }
    return text;
  }

  private List<String> chosen(Facet facet, List<String> given) {
    List<String> values = new ArrayList<>();
    for (String text : given) {
      if (text.isBlank()) {
        continue;
      }
      if (values.size() == SearchLimits.CHOSEN) {
        problem(
            facet.code(),
            RemarkId.VALUES_TOO_MANY,
            "At most " + SearchLimits.CHOSEN + " values a facet.");
        break;
      }
      Optional<String> read = FacetValues.read(facet, text, vocabulary);
      if (read.isEmpty()) {
        problems.add(unknown(facet, text));
      }
      values.add(read.orElseGet(() -> cut(text.strip())));
    }
    return values;
  }

  private static String cut(String text) {
    return text.length() > SearchLimits.VALUE ? text.substring(0, SearchLimits.VALUE) : text;
  }

  private Remark unknown(Facet facet, String text) {
    List<String> thicknesses = facet == Facet.THICKNESS ? FacetValues.thicknesses(text) : List.of();
    if (!thicknesses.isEmpty()) {
      String asked = "Do you mean %s?".formatted(String.join(" or ", thicknesses));
      return new Remark(
          RemarkId.UNIT_MISSING, Severity.ERROR, "/" + facet.code(), asked, thicknesses);
    }
    List<String> readings =
        facet
            .vocabulary()
            .map(kind -> vocabulary.resolve(kind, cut(text)).candidates())
            .map(terms -> terms.stream().map(Term::slug).toList())
            .orElseGet(() -> List.copyOf(FacetValues.fixed(facet).keySet()));
    String detail = "There is no such value of " + facet.label().toLowerCase(Locale.ROOT) + ".";
    return new Remark(RemarkId.VALUE_UNKNOWN, Severity.ERROR, "/" + facet.code(), detail, readings);
  }

  private Optional<Double> limit(
      RangeField range, String name, Map<String, List<String>> parameters) {
    return single(name, parameters)
        .flatMap(
            text ->
                range.dimension().isPresent()
                    ? quantity(range.dimension().get(), name, text)
                    : day(name, text));
  }

  private Optional<Double> quantity(QuantityKind dimension, String name, String text) {
    Reading<Quantity> reading = QuantityReader.read(dimension, text, style).at("/" + name);
    reading.remarks().stream().filter(Remark::isError).forEach(problems::add);
    return reading.value().map(Quantity::doubleValue);
  }

  private Optional<Double> day(String name, String text) {
    try {
      return Optional.of((double) LocalDate.parse(text.strip()).toEpochDay());
    } catch (DateTimeException e) {
      problem(name, RemarkId.DATE_UNREADABLE, "A date is written like 2026-01-31.");
      return Optional.empty();
    }
  }

  private UUID near(Map<String, List<String>> parameters) {
    Optional<String> given = single(NEAR, parameters);
    try {
      return given.map(String::strip).map(UUID::fromString).orElse(null);
    } catch (IllegalArgumentException e) {
      problem(NEAR, RemarkId.ID_UNREADABLE, "This is the id of a machine.");
      return null;
    }
  }

  private String sort(Map<String, List<String>> parameters) {
    String given = single(SORT, parameters).orElse("");
    if (!given.isEmpty() && Coded.of(Order.class, given).isEmpty()) {
      problem(SORT, RemarkId.VALUE_UNKNOWN, "There is no such order.");
      return "";
    }
    return given;
  }

  private int number(
      String name, Map<String, List<String>> parameters, int usual, int least, int most) {
    String given = single(name, parameters).map(String::strip).orElse("");
    if (given.isEmpty()) {
      return usual;
    }
    int value = given.matches("\\d{1,6}") ? Integer.parseInt(given) : -1;
    if (value < least || value > most) {
      problem(
          name, RemarkId.NUMBER_OUT_OF_RANGE, "A whole number from " + least + " to " + most + ".");
      return usual;
    }
    return value;
  }

  /** The address of a query without the question mark; empty for everything. */
  public static String write(SearchQuery query) {
    List<String> pairs = new ArrayList<>();
    pair(pairs, TEXT, query.text());
    query.facets().forEach((code, values) -> values.forEach(value -> pair(pairs, code, value)));
    query
        .ranges()
        .forEach((stem, limits) -> RangeField.of(stem).ifPresent(f -> range(pairs, f, limits)));
    pair(pairs, NEAR, query.near() == null ? "" : query.near().toString());
    boolean usual = query.sort().equals(Order.usual(query).code());
    pair(pairs, SORT, usual ? "" : query.sort());
    pair(pairs, PAGE, query.page() == 0 ? "" : Integer.toString(query.page()));
    boolean usualSize = query.size() == SearchLimits.DEFAULT_SIZE;
    pair(pairs, SIZE, usualSize ? "" : Integer.toString(query.size()));
    return String.join("&", pairs);
  }

  private static void range(List<String> pairs, RangeField range, SearchQuery.Limits limits) {
    pair(pairs, range.minParameter(), written(range, limits.min()));
    pair(pairs, range.maxParameter(), written(range, limits.max()));
  }

  /** A limit as it stands in an address or a field of a form; empty where open. */
  public static String written(RangeField range, Double limit) {
    if (limit == null) {
      return "";
    }
    return range
        .dimension()
        .map(d -> QuantityPrinter.print(BigDecimal.valueOf(limit), d, UnitPreferences.metric()))
        .orElseGet(() -> LocalDate.ofEpochDay(limit.longValue()).toString());
  }

  private static void pair(List<String> pairs, String name, String value) {
    if (!value.isEmpty()) {
      pairs.add(name + "=" + QueryString.encoded(value));
    }
  }
}

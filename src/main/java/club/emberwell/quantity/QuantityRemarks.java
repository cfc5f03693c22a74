package club.emberwell.quantity;

/** Ids of the remarks that reading a quantity can make. Stored with entries: never renamed. */
public final class QuantityRemarks {
  public static final String EMPTY = "empty";
  public static final String TEXT_TOO_LONG = "text-too-long";
  public static final String UNREADABLE_CHARACTER = "unreadable-character";
  public static final String NOT_A_NUMBER = "not-a-number";
  public static final String NUMBER_AMBIGUOUS = "number-ambiguous";
  public static final String UNIT_MISSING = "unit-missing";
  public static final String UNIT_AMBIGUOUS = "unit-ambiguous";
  public static final String UNIT_UNKNOWN = "unit-unknown";
  public static final String UNIT_OF_OTHER_DIMENSION = "unit-of-other-dimension";
  public static final String RANGE_GIVEN = "range-given";
  public static final String NOT_EXACT = "not-exact";
  public static final String FRACTION_NOT_HERE = "fraction-not-here";
  public static final String FRACTION_AMBIGUOUS = "fraction-ambiguous";
  public static final String DENOMINATOR_MISSING = "denominator-missing";
  public static final String GAUGE_NEEDS_METAL = "gauge-needs-metal";
  public static final String GAUGE_UNKNOWN = "gauge-unknown";
  public static final String NEGATIVE = "negative";
  public static final String ZERO = "zero";
  public static final String OUT_OF_RANGE = "out-of-range";
  public static final String ABOVE_WHOLE = "above-whole";

  /** Not an error: the thickness came from a table of sheet gauges. */
  public static final String GAUGE_TABLE = "gauge-table";

  private QuantityRemarks() {}
}

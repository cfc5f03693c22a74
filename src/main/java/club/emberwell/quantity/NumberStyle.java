package club.emberwell.quantity;

/**
 * How a reader takes a single mark followed by exactly three digits ({@code 1,000}; {@code 4.500}).
 * Everything else means the same in every style.
 */
public enum NumberStyle {
  /** Nothing is known about the writer: ask. The only style of the API. */
  ANY,
  /** {@code 4.500} is four and a half, {@code 1,000} a thousand. */
  DECIMAL_POINT,
  /** {@code 4,500} is four and a half, {@code 1.000} a thousand. */
  DECIMAL_COMMA
}

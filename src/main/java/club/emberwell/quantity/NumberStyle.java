package club.emberwell.quantity;

import club.emberwell.remark.Coded;

/**
 * How a reader takes a single mark followed by exactly three digits ({@code 1,000}; {@code 4.500}).
 * Everything else means the same in every style.
 */
public enum NumberStyle implements Coded {
  /** Nothing is known about the writer: ask. The only style of the API. */
  ANY("any"),
  /** {@code 4.500} is four and a half, {@code 1,000} a thousand. */
  DECIMAL_POINT("point"),
  /** {@code 4,500} is four and a half, {@code 1.000} a thousand. */
  DECIMAL_COMMA("comma");

  private final String code;

  NumberStyle(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }
}

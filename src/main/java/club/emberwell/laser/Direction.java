package club.emberwell.laser;

import club.emberwell.remark.Coded;
import java.util.Optional;

/** Whether the beam works on the way back too. */
public enum Direction implements Coded {
  ONE_WAY("one-way", "One-way"),
  TWO_WAY("two-way", "Two-way");

  private final String code;
  private final String label;

  Direction(String code, String label) {
    this.code = code;
    this.label = label;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The value with this API code; spaces, case and underscores do not matter; empty if none. */
  public static Optional<Direction> of(String code) {
    return Codes.find(values(), Direction::code, code);
  }
}

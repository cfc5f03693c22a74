package club.emberwell.bench;

import club.emberwell.remark.Coded;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Whether a pulsed source lets its user choose the pulse duration. */
public enum PulseControl implements Coded {
  SET_FREELY("set-freely", "You can set the pulse duration"),
  FOLLOWS_REPETITION_RATE("follows-repetition-rate", "Pulse duration depends on the frequency");

  private final String code;
  private final String label;

  PulseControl(String code, String label) {
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

  /** The value with this API code, however cased; empty if none. */
  public static Optional<PulseControl> of(String code) {
    String wanted = code.strip().toLowerCase(Locale.ROOT);
    return Stream.of(values()).filter(value -> value.code.equals(wanted)).findFirst();
  }
}

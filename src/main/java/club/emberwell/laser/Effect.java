package club.emberwell.laser;

import club.emberwell.remark.Coded;
import java.util.Optional;

/** The one judgement every trial carries. */
public enum Effect implements Coded {
  TOO_LITTLE("too-little", "Too little"),
  RIGHT("right", "Right"),
  TOO_MUCH("too-much", "Too much");

  private final String code;
  private final String label;

  Effect(String code, String label) {
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
  public static Optional<Effect> of(String code) {
    return Codes.find(values(), Effect::code, code);
  }
}

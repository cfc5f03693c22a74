package club.emberwell.hook;

import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;

/** Whether a webhook is told anything. */
public enum HookState implements Coded {
  ON("on", "On"),
  /** By an owner. */
  OFF("off", "Off"),
  /** Nothing arrived for days. */
  FAILED("failed", "Switched off: nothing arrived for days"),
  /** The other side answered 410. */
  GONE("gone", "Switched off: the other side wants no more");

  @EnumeratedValue private final String code;
  private final String label;

  HookState(String code, String label) {
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
}

package club.emberwell.desk.flag;

import club.emberwell.entry.Decision;
import club.emberwell.member.Role;
import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;

/** Why something is flagged. Each reason has a role that settles it and what usually follows. */
public enum FlagReason implements Coded {
  UNSAFE_ADVICE(
      "unsafe-advice",
      "Unsafe advice",
      Severity.HARMS,
      Role.MODERATOR,
      Decision.HOLD,
      "Hold it at once. Compare it with the cautions and their sources, then decide."),
  WRONG_NUMBERS(
      "wrong-numbers",
      "Wrong numbers",
      Severity.ANNOYS,
      Role.MODERATOR,
      Decision.HOLD,
      "Compare it with the range. Ask the author to correct it; hold it if they do not."),
  SPAM(
      "spam",
      "Spam",
      Severity.ANNOYS,
      Role.MODERATOR,
      Decision.REMOVE,
      "Remove it. Check what else this member posted, and undo it if needed."),
  OFF_TOPIC(
      "off-topic",
      "Off topic",
      Severity.ANNOYS,
      Role.MODERATOR,
      Decision.REMOVE,
      "Remove it and say where it fits."),
  PERSONAL_DATA(
      "personal-data",
      "Personal data",
      Severity.HARMS,
      Role.OWNER,
      Decision.REMOVE,
      "Remove it at once. An owner answers the person concerned."),
  RIGHTS(
      "rights",
      "Somebody else's work",
      Severity.HARMS,
      Role.OWNER,
      Decision.HOLD,
      "Hold it. An owner asks for permission and decides.");

  /** What flags for a reason may come to, the worst first. */
  private enum Severity {
    HARMS,
    ANNOYS
  }

  @EnumeratedValue private final String code;
  private final String label;
  private final Severity severity;
  private final Role owner;
  private final Decision action;
  private final String advice;

  FlagReason(
      String code, String label, Severity severity, Role owner, Decision action, String advice) {
    this.code = code;
    this.label = label;
    this.severity = severity;
    this.owner = owner;
    this.action = action;
    this.advice = advice;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** Where it stands among all that waits at the desk: 0 the worst, 1 the next. */
  public int rank() {
    return severity.ordinal();
  }

  /** The lowest role that settles such flags. */
  public Role owner() {
    return owner;
  }

  /** What usually follows. */
  public Decision action() {
    return action;
  }

  public String advice() {
    return advice;
  }
}

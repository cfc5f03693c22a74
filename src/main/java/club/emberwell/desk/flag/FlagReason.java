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
      Role.MODERATOR,
      Decision.HOLD,
      "Hold it at once. Compare it with the cautions and their sources, then decide."),
  WRONG_NUMBERS(
      "wrong-numbers",
      "Wrong numbers",
      Role.MODERATOR,
      Decision.HOLD,
      "Compare it with the range. Ask the author to correct it; hold it if they do not."),
  SPAM(
      "spam",
      "Spam",
      Role.MODERATOR,
      Decision.REMOVE,
      "Remove it. Check what else this member posted, and undo it if needed."),
  OFF_TOPIC(
      "off-topic",
      "Off topic",
      Role.MODERATOR,
      Decision.REMOVE,
      "Remove it and say where it fits."),
  PERSONAL_DATA(
      "personal-data",
      "Personal data",
      Role.OWNER,
      Decision.REMOVE,
      "Remove it at once. An owner answers the person concerned."),
  RIGHTS(
      "rights",
      "Somebody else's work",
      Role.OWNER,
      Decision.HOLD,
      "Hold it. An owner asks for permission and decides.");

  @EnumeratedValue private final String code;
  private final String label;
  private final Role owner;
  private final Decision action;
  private final String advice;

  FlagReason(String code, String label, Role owner, Decision action, String advice) {
    this.code = code;
    this.label = label;
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

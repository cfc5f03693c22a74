package club.emberwell.member.account;

import club.emberwell.remark.Coded;
import java.util.Locale;

/** What a newcomer or a new owner did or put away, where nothing else tells. */
public enum FirstStep implements Coded {
  /** Looked at the units and kept or chose them. */
  UNITS,
  /** Looked at how to read a range. */
  RANGE,
  /** Wants no list of first steps. */
  PUT_AWAY,
  /** The rules of the desk are as this owner wants them. */
  OWNER_RULES,
  /** Wants no example club. */
  OWNER_EXAMPLE,
  /** Wants no list of an owner's first steps. */
  OWNER_PUT_AWAY;

  @Override
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}

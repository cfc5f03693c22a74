package club.emberwell.member.mail;

import club.emberwell.remark.Coded;
import java.util.Locale;

/** Letters that come again and again, which their receiver can end. */
public enum LetterKind implements Coded {
  /** What a member's watches found. */
  WATCH;

  @Override
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }
}

package club.emberwell.member;

/** What any stored text must be. */
public final class Texts {
  private Texts() {}

  /** No control characters (the database takes no NUL) and no half of a surrogate pair. */
  public static boolean isCleanUnicode(String text) {
    return text.codePoints()
        .noneMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE);
  }

  /** Length as a person counts it, nearly. */
  public static int length(String text) {
    return text.codePointCount(0, text.length());
  }
}

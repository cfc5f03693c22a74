package club.emberwell.launch;

/**
 * What the doctor found.
 *
 * @param what was looked at
 * @param sentence what was found, and what to do about it
 */
record Finding(Level level, String what, String sentence) {
  /** How bad it is. */
  enum Level {
    OK,
    WARN,
    FAIL
  }

  private static final String ROW = "%-4s  %-12s  %s";

  static Finding ok(String what, String sentence) {
    return new Finding(Level.OK, what, sentence);
  }

  static Finding warn(String what, String sentence) {
    return new Finding(Level.WARN, what, sentence);
  }

  static Finding fail(String what, String sentence) {
    return new Finding(Level.FAIL, what, sentence);
  }

  /** As a row of the table. */
  String row() {
    return ROW.formatted(level, what, sentence.replaceAll("\\s+", " "));
  }
}

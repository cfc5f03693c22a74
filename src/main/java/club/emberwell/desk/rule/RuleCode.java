package club.emberwell.desk.rule;

import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;

/** The rules and their defaults. Each begins with a note and no more. */
public enum RuleCode implements Coded {
  FIRST_LOOK(
      "first-look",
      "First look (approval)",
      "The first entries of a new member wait for approval, until this many are approved.",
      "Approved entries",
      Double.NaN,
      0),
  BURST("burst", "Burst", "One member posts this many entries in this time.", "Entries", 25, 10),
  REPEATED_TEXT(
      "repeated-text",
      "Repeated text",
      "One member posts the same words this many times in this time.",
      "Times",
      3,
      24 * 60),
  NEWCOMER_LINKS(
      "newcomer-links",
      "Links by new members",
      "A member with fewer entries than this posts a link.",
      "Entries",
      5,
      0),
  FAR_OUTSIDE(
      "far-outside",
      "Far outside the range",
      "A good result with a dose far outside what others used for the same work (modified z on logarithms, from 8 members on).",
      "Modified z",
      5,
      0);

  @EnumeratedValue private final String code;
  private final String label;
  private final String says;
  private final String counts;
  private final double threshold;
  private final int minutes;

  RuleCode(String code, String label, String says, String counts, double threshold, int minutes) {
    this.code = code;
    this.label = label;
    this.says = says;
    this.counts = counts;
    this.threshold = threshold;
    this.minutes = minutes;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** What it notices, in a sentence. */
  public String says() {
    return says;
  }

  /** What the threshold counts. */
  public String counts() {
    return counts;
  }

  /** The threshold unless another is set; that of the first look is in the configuration. */
  double threshold() {
    return threshold;
  }

  /** The time it looks back; 0 where it does not. */
  int minutes() {
    return minutes;
  }
}

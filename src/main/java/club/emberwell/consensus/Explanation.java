package club.emberwell.consensus;

import club.emberwell.member.Members.Named;
import club.emberwell.search.query.Measure;
import java.util.List;

/**
 * How a number of a range came about.
 *
 * @param number which: its path in the JSON answer, e.g. {@code dose.median}
 * @param method what was done, in a sentence
 * @param formula in symbols; empty where there is none
 * @param source where the method is published
 * @param counts what stands behind it, in words
 * @param caveats what to keep in mind
 */
public record Explanation(
    String number,
    String method,
    String formula,
    String source,
    String counts,
    List<String> caveats) {

  /**
   * One voice behind a measure.
   *
   * @param member who
   * @param value canonical
   * @param trials right trials whose median it is
   * @param aside true where it is set aside: drawn hollow, counted apart
   */
  public record Voice(Named member, double value, int trials, boolean aside) {
    /** Their name; "former member" for those who left. */
    public String handle() {
      return member.handle();
    }
  }

  /** The voices of one measure, in ascending order of their values. */
  public record Voices(Measure measure, List<Voice> voices) {}

  /** Everything that opens one range. */
  public record All(List<Explanation> numbers, List<Voices> voices) {}
}

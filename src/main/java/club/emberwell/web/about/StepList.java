package club.emberwell.web.about;

import java.util.List;

/**
 * First steps, ticked off from how things truly are.
 *
 * @param hide where a press puts the list away
 */
public record StepList(List<Step> steps, String hide) {
  /**
   * One of them.
   *
   * @param why in a sentence, what for
   */
  public record Step(String href, String label, String why, boolean done) {}

  /** How many are done. */
  public long getDone() {
    return steps.stream().filter(Step::done).count();
  }

  /** Whether nothing is left to do. */
  public boolean isAllDone() {
    return getDone() == steps.size();
  }
}

package club.emberwell.report.reading;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Process;
import club.emberwell.remark.RemarkId;

/**
 * How a member is asked for a property of the work.
 *
 * @param group where it stands on the form
 * @param hint how it may be typed, null = nothing to say
 * @param question asked instead of the label, null = the label
 * @param isNeeded whether no report is complete without it
 * @param isOnce whether the next report of the same member likely says something else
 * @param isOfSurface whether it is seldom said of work that goes through the piece
 * @param missed what is said where it is missing, null = nothing
 */
public record WorkForm(
    Group group,
    String hint,
    String question,
    boolean isNeeded,
    boolean isOnce,
    boolean isOfSurface,
    Missed missed) {
  /** Part of the form. */
  public enum Group {
    PIECE,
    FINISH,
    /** Behind the process, since that decides whether it matters. */
    OF_PROCESS,
    NOTES,
    BESIDE
  }

  /** What is said where one process misses it. */
  public record Missed(Process at, RemarkId id, String words) {}

  /** Whether a report on such work says too little without it. */
  public boolean isMissedAt(Process process) {
    return missed != null && missed.at() == process;
  }

  /** Whether the form asks for it at such work by itself; elsewhere only whoever looks for it. */
  public boolean isAskedAt(Process process) {
    return missed == null
        ? !isOfSurface || process.doseKind() == DoseKind.AREAL
        : missed.at() == process;
  }

  static WorkForm asked(Group group, String hint) {
    return new WorkForm(group, hint, null, false, false, false, null);
  }

  WorkForm as(String words) {
    return new WorkForm(group, hint, words, isNeeded, isOnce, isOfSurface, missed);
  }

  WorkForm needed() {
    return new WorkForm(group, hint, question, true, isOnce, isOfSurface, missed);
  }

  WorkForm once() {
    return new WorkForm(group, hint, question, isNeeded, true, isOfSurface, missed);
  }

  WorkForm ofSurface() {
    return new WorkForm(group, hint, question, isNeeded, isOnce, true, missed);
  }

  WorkForm missedAt(Process process, RemarkId id, String words) {
    Missed some = new Missed(process, id, words);
    return new WorkForm(group, hint, question, isNeeded, isOnce, isOfSurface, some);
  }
}

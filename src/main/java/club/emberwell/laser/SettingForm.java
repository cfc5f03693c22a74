package club.emberwell.laser;

/**
 * How a member is asked for a setting and told of it.
 *
 * @param group where it stands on the form
 * @param example how it may be typed, null = nothing to say
 * @param question asked instead of the label, null = the label
 * @param isNeeded whether no trial is complete without it
 * @param inLine whether a trial in one line of words tells it
 * @param areaOnly whether it says nothing about line work
 */
public record SettingForm(
    Group group,
    String example,
    String question,
    boolean isNeeded,
    boolean inLine,
    boolean areaOnly) {
  /** Part of the form. */
  public enum Group {
    /** What everybody sets. */
    MAIN,
    /** Folded away until somebody wants it. */
    MORE
  }

  static SettingForm main(String example) {
    return new SettingForm(Group.MAIN, example, null, false, true, false);
  }

  static SettingForm more(String example) {
    return new SettingForm(Group.MORE, example, null, false, true, false);
  }

  SettingForm needed() {
    return new SettingForm(group, example, question, true, inLine, areaOnly);
  }

  SettingForm asking(String words) {
    return new SettingForm(group, example, words, isNeeded, inLine, areaOnly);
  }

  SettingForm notInLine() {
    return new SettingForm(group, example, question, isNeeded, false, areaOnly);
  }

  SettingForm ofAreaWork() {
    return new SettingForm(group, example, question, isNeeded, inLine, true);
  }

  /** What stands beside the field; null = nothing. */
  public String hint() {
    return areaOnly ? example + "; for area work only" : example;
  }
}

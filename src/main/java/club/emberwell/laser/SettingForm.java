package club.emberwell.laser;

/**
 * How a member is asked for a setting and told of it.
 *
 * @param group where it stands on the form
 * @param example how it may be typed, null = nothing to say
 * @param question asked instead of the label, null = the label
 * @param isNeeded whether no trial is complete without it
 * @param inLine whether a trial in one line of words tells it
 * @param applies to which work and which lasers it says something
 */
public record SettingForm(
    Group group,
    String example,
    String question,
    boolean isNeeded,
    boolean inLine,
    Applies applies) {
  /** Part of the form. */
  public enum Group {
    /** What everybody sets. */
    MAIN,
    /** What everybody with a pulsed laser sets. */
    PULSES,
    /** Folded away until somebody wants it. */
    MORE
  }

  /** To what a setting says something. */
  public enum Applies {
    TO_ALL,
    TO_AREA_WORK,
    TO_PULSED_LASERS
  }

  static SettingForm main(String example) {
    return new SettingForm(Group.MAIN, example, null, false, true, Applies.TO_ALL);
  }

  static SettingForm pulses(String example) {
    return new SettingForm(Group.PULSES, example, null, false, true, Applies.TO_PULSED_LASERS);
  }

  static SettingForm more(String example) {
    return new SettingForm(Group.MORE, example, null, false, true, Applies.TO_ALL);
  }

  SettingForm needed() {
    return new SettingForm(group, example, question, true, inLine, applies);
  }

  SettingForm asking(String words) {
    return new SettingForm(group, example, words, isNeeded, inLine, applies);
  }

  SettingForm notInLine() {
    return new SettingForm(group, example, question, isNeeded, false, applies);
  }

  SettingForm ofAreaWork() {
    return new SettingForm(group, example, question, isNeeded, inLine, Applies.TO_AREA_WORK);
  }

  /** What stands beside the field; null = nothing. */
  public String hint() {
    if (applies != Applies.TO_AREA_WORK) {
      return example;
    }
    return example == null ? "For area work only" : example + "; for area work only";
  }
}

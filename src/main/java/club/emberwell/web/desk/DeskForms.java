package club.emberwell.web.desk;

import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryState;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import java.util.ArrayList;
import java.util.List;

/** What the forms of the desk share. */
final class DeskForms {
  /** The item stays as it is: the flags on it were wrong. */
  private static final String LEAVE = "leave";

  /** The same where they were right until its author mended it. */
  private static final String MENDED = "mended";

  private DeskForms() {}

  /** A reason others will read. */
  static Field reason(String hint) {
    return why("reason", hint).required();
  }

  private static Field why(String name, String hint) {
    return Field.of(name, "Reason").hint(hint).maxLength(DeskLimits.REASON).lines().aside();
  }

  /** A deed that needs a reason and nothing else. */
  static Form because(String hint) {
    return new Form().add(reason(hint));
  }

  /** A button that decides. */
  record Choice(String code, String label, String style) {}

  /** Deciding about an item: why. */
  static Form decision() {
    return new Form()
        .add(
            why(
                "reason",
                "The author reads this, and whoever flagged it. Optional when you approve."));
  }

  /** Deciding about many items at once: why. */
  static Form together() {
    return new Form()
        .add(why("reason", "The author reads this. Optional if you keep all as it is."));
  }

  /**
   * What can be decided about an item in this state.
   *
   * @param flagged whether members flagged it
   * @param open whether there is something to answer although it stays as it is
   */
  static List<Choice> choices(EntryState state, boolean flagged, boolean open) {
    List<Choice> choices = new ArrayList<>();
    if (open && (state == EntryState.LIVE || state == EntryState.WITHDRAWN)) {
      choices.add(
          new Choice(LEAVE, flagged ? "Keep it: nothing is wrong" : "Nothing is wrong", "primary"));
    }
    if (flagged && state == EntryState.LIVE) {
      choices.add(new Choice(MENDED, "Keep it: was wrong, is mended", "secondary"));
    }
    for (Decision decision : Decision.from(state)) {
      String style =
          decision == Decision.REMOVE
              ? "danger"
              : decision == Decision.HOLD ? "secondary" : "primary";
      choices.add(new Choice(decision.code(), decision.label(), style));
    }
    return choices;
  }

  /** The decision about the item itself; null where it stays as it is. */
  static Decision decided(String action) {
    return LEAVE.equals(action) || MENDED.equals(action) ? null : Decision.read("/action", action);
  }

  /** Whether flags on it were right. */
  static boolean upheld(String action) {
    return MENDED.equals(action)
        || Decision.HOLD.code().equals(action)
        || Decision.REMOVE.code().equals(action);
  }

  static Form flag() {
    return new Form()
        .add(
            Field.of("reason", "Problem")
                .choices(FlagReason.values(), FlagReason::label)
                .required())
        .add(Field.of("note", "Details").maxLength(DeskLimits.NOTE).lines());
  }
}

package club.emberwell.web.desk;

import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryState;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;

/** What the forms of the desk share. */
final class DeskForms {
  private DeskForms() {}

  /**
   * An answer that must be given.
   *
   * @throws EntryRefused for anything but yes or no
   */
  static boolean yes(String pointer, String answer) {
    if (!"yes".equals(answer) && !"no".equals(answer)) {
      throw new EntryRefused(RemarkId.CHOICE_UNKNOWN, pointer, "Choose yes or no.");
    }
    return answer.equals("yes");
  }

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

  /** Deciding about an item in this state. */
  static Form decision(EntryState state) {
    return new Form()
        .add(
            Field.of("action", "Decision")
                .choices(Decision.from(state), Decision::code, Decision::label)
                .required())
        .add(why("reason", "The author reads this. Optional when you approve."));
  }

  /** Answering the flags on an item in this state. */
  static Form settling(EntryState state) {
    return new Form()
        .named(name -> "settle." + name)
        .add(
            Field.of("upheld", "Were the flags right?")
                .choice("yes", "Yes")
                .choice("no", "No")
                .required())
        .add(
            Field.of("settle.action", "Decision about the entry")
                .choice("", "Nothing")
                .choices(
                    Decision.from(state).stream()
                        .filter(a -> a == Decision.HOLD || a == Decision.REMOVE)
                        .toList(),
                    Decision::code,
                    Decision::label)
                .required())
        .add(
            why(
                    "settle.reason",
                    "The person who flagged it reads this. If you hold or remove it, the author too.")
                .required());
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

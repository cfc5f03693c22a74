package club.emberwell.entry;

import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import java.util.List;
import java.util.stream.Stream;

/** What moderators can decide about an entry. */
public enum Decision implements Coded {
  /** The first look is done: it appears. */
  APPROVE("approve", "Approve", "approved", EntryState.LIVE, EntryAction.APPROVED),
  /** Out of sight until something is settled. */
  HOLD("hold", "Hold", "held until something is settled", EntryState.HELD, EntryAction.HELD),
  REMOVE("remove", "Remove", "removed", EntryState.REMOVED, EntryAction.REMOVED),
  RESTORE("restore", "Restore", "restored", EntryState.LIVE, EntryAction.RESTORED);

  private final String code;
  private final String label;
  private final String said;
  private final EntryState state;
  private final EntryAction action;

  Decision(String code, String label, String said, EntryState state, EntryAction action) {
    this.code = code;
    this.label = label;
    this.said = said;
    this.state = state;
    this.action = action;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** In the past tense, for the author. */
  public String said() {
    return said;
  }

  /** The state an entry is in afterwards. */
  EntryState state() {
    return state;
  }

  /** How it stands in the history. */
  EntryAction action() {
    return action;
  }

  /** The decision a step of a history was; the other steps are none. */
  static Decision of(EntryAction action) {
    return Stream.of(values()).filter(d -> d.action == action).findFirst().orElseThrow();
  }

  /** What can be decided about an entry in this state; nothing once its author withdrew it. */
  public static List<Decision> from(EntryState state) {
    return switch (state) {
      case WAITING -> List.of(APPROVE, HOLD, REMOVE);
      case LIVE -> List.of(HOLD, REMOVE);
      case HELD -> List.of(RESTORE, REMOVE);
      case REMOVED -> List.of(RESTORE, HOLD);
      case WITHDRAWN -> List.of();
    };
  }

  /**
   * Reads a choice that must be made.
   *
   * @throws EntryRefused for any other word
   */
  public static Decision read(String pointer, String code) {
    return Coded.of(Decision.class, code)
        .orElseThrow(
            () ->
                new EntryRefused(
                    RemarkId.CHOICE_UNKNOWN,
                    pointer,
                    "Choose one of: approve, hold, remove, restore."));
  }
}

package club.emberwell.desk;

import club.emberwell.remark.RemarkId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What can be decided about an item. */
public enum Action {
  /** The first look is done: it appears. */
  APPROVE("approve", "Let it appear", "LIVE"),
  /** Out of sight until something is settled. */
  HOLD("hold", "Hold it", "HELD"),
  REMOVE("remove", "Remove it", "REMOVED"),
  RESTORE("restore", "Restore it", "LIVE");

  private final String code;
  private final String label;
  private final String state;

  Action(String code, String label, String state) {
    this.code = code;
    this.label = label;
    this.state = state;
  }

  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** What can be done about an item in this state; nothing once its author withdrew it. */
  public static List<Action> from(String state) {
    return switch (state) {
      case "WAITING" -> List.of(APPROVE, HOLD, REMOVE);
      case "LIVE" -> List.of(HOLD, REMOVE);
      case "HELD" -> List.of(RESTORE, REMOVE);
      case "REMOVED" -> List.of(RESTORE, HOLD);
      default -> List.of();
    };
  }

  /** The state an item is in afterwards. */
  String state() {
    return state;
  }

  public static Optional<Action> of(String code) {
    return Stream.of(values()).filter(action -> action.code.equals(code)).findFirst();
  }

  /**
   * Reads a choice that must be made.
   *
   * @throws club.emberwell.remark.EntryRefused for any other word
   */
  public static Action read(String pointer, String code) {
    return of(code)
        .orElseThrow(
            () ->
                DeskAccess.refused(
                    RemarkId.CHOICE_UNKNOWN,
                    pointer,
                    "Choose one of: approve, hold, remove, restore."));
  }
}

package club.emberwell.entry;

import jakarta.persistence.EnumeratedValue;

/** Why there is another version of an entry. */
public enum EntryAction {
  POSTED("posted", "Posted"),
  EDITED("edited", "Edited"),
  ACCEPTED("accepted", "Answer accepted"),
  WITHDRAWN("withdrawn", "Withdrawn"),
  HELD("held", "Held"),
  REMOVED("removed", "Removed"),
  RESTORED("restored", "Restored"),
  /** After a first look. */
  APPROVED("approved", "Restored"),
  PHOTO_ADDED("photo-added", "Photo added"),
  /** Its words, or which stands first. */
  PHOTO_CHANGED("photo-changed", "Photo changed"),
  PHOTO_REMOVED("photo-removed", "Photo removed"),
  /** The words in it were filed anew, or a mended reader read it. */
  READ_AGAIN("read-again", "Read again with new words");

  @EnumeratedValue private final String code;
  private final String label;

  EntryAction(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /**
   * The word in the API: to readers of a history an entry that was let appear is in sight again.
   */
  public String code() {
    return this == APPROVED ? RESTORED.code : code;
  }

  public String label() {
    return label;
  }
}

package club.emberwell.exchange;

import club.emberwell.exchange.MemberDownload.Zip;
import java.util.List;
import java.util.UUID;

/**
 * What a feature keeps about a member. Every feature that stores something personal contributes a
 * bean; the download and the erasure ask them all, the one with the highest priority first: what
 * points to others' rows goes before what it points to.
 */
public interface PersonalData {
  /**
   * A list of the download.
   *
   * @param file e.g. {@code reports.json}
   * @param select reads its rows, takes {@code :member}
   */
  record Rows(String file, String select) {}

  List<Rows> lists();

  /** What else goes into the download. */
  default void addFiles(UUID member, MemberRowsRepository rows, Zip zip) {}

  /**
   * Statements that take out every name, address and text of the member, and as chosen the
   * measurements. The member's row stays as an empty shell, so keys never block.
   */
  String erasing(Choice choice);

  /** Erases in the caller's transaction. */
  default void erase(UUID member, Choice choice, MemberRowsRepository rows) {
    rows.run(erasing(choice), member);
  }

  /** What becomes of measurements. */
  enum Choice {
    /** They stay, by a former member. */
    KEEP,
    /** They go too. */
    REMOVE;

    /** As stored and as the API spells it. */
    public String code() {
      return this == KEEP ? "keep" : "remove";
    }
  }
}

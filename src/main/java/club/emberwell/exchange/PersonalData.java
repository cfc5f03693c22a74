package club.emberwell.exchange;

import java.util.UUID;
import java.util.stream.Stream;

/**
 * What a feature keeps about a member. Every feature that stores something personal contributes a
 * bean; the download and the erasure ask them all.
 */
public interface PersonalData {
  /** Smaller first when erasing: what points to others' rows goes before what it points to. */
  int order();

  /** Puts everything kept about the member into the download. */
  void write(UUID member, Parcel parcel);

  /**
   * Takes out, in the caller's transaction, every name, address and text of the member, and as
   * chosen the measurements. The member's row stays as an empty shell, so keys never block.
   */
  void erase(UUID member, Choice choice);

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

  /** Where the download is filled. */
  interface Parcel {
    /**
     * A list as JSON.
     *
     * @param name e.g. {@code reports.json}
     * @param rows JSON texts
     */
    void rows(String name, Stream<String> rows);

    /** Any other file. */
    void file(String name, byte[] content);
  }
}

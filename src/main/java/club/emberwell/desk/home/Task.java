package club.emberwell.desk.home;

import club.emberwell.desk.flag.FlagReason;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * One thing that waits for a decision of one moderator; what only somebody else may decide is none.
 *
 * @param rank how bad it may be, 0 the worst
 * @param since when it began to wait
 * @param id of its own; of an entry or a word that of the thing
 * @param title what it is called, or the code of a rule
 * @param who whose it is, or null
 * @param count how many flags, notes, requests or uses of a word
 */
public record Task(
    TaskKind kind,
    int rank,
    Instant since,
    UUID id,
    String title,
    String who,
    About about,
    long count) {

  /**
   * What more there is to say of it.
   *
   * @param of the kind of an entry or a word, the caution to remove, the rule of notes; else null
   * @param member whose entries a rule noticed; else null
   * @param reasons of flags; else empty
   */
  public record About(String of, UUID member, List<FlagReason> reasons) {}

  /** Where it is decided: a path of this server. */
  public String path() {
    return switch (kind) {
      case FLAG, ENTRY -> "/desk/items/" + about.of() + "/" + id;
      case REQUEST -> "/desk/requests";
      case PROPOSAL -> "/cautions/proposals/" + id;
      case REMOVAL -> "/desk/cautions/" + about.of();
      case NOTES -> "/desk/notes/" + about.of() + "/" + about.member();
      case WORD -> "/desk/words/" + id;
    };
  }

  /** How long it waits, in words. */
  public String age() {
    return DeskHome.said(Duration.between(since, Instant.now()));
  }

  /** Its place where the worst stand first, or the oldest. */
  List<?> place(boolean oldestFirst) {
    return oldestFirst ? List.of(since, rank, id) : List.of(rank, since, id);
  }
}

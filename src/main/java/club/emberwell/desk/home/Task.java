package club.emberwell.desk.home;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * One thing that waits for a decision of one moderator; what only somebody else may decide is none.
 *
 * @param kind {@code flag}, {@code entry}, {@code request}, {@code proposal}, {@code removal},
 *     {@code notes} or {@code word}
 * @param rank how bad it may be, 0 the worst
 * @param since when it began to wait
 * @param id of its own; of an entry or a word that of the thing
 * @param title what it is called, or the code of a rule
 * @param who whose it is, or null
 * @param about codes that say more, and what its address needs
 * @param count how many flags, notes, requests or uses of a word
 */
public record Task(
    String kind,
    int rank,
    Instant since,
    UUID id,
    String title,
    String who,
    String about,
    long count) {

  /** Where it is decided: a path of this server. */
  public String path() {
    return switch (kind) {
      case "flag", "entry" -> "/desk/items/" + about.split(" ")[0] + "/" + id;
      case "request" -> "/desk/requests";
      case "proposal" -> "/cautions/proposals/" + id;
      case "removal" -> "/desk/cautions/" + about;
      case "notes" -> "/desk/notes/" + about.replace(' ', '/');
      case "word" -> "/desk/words/" + id;
      default -> throw new IllegalStateException("no such task: " + kind);
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

package club.emberwell.talk.watch;

import java.time.Instant;
import java.util.UUID;

/**
 * A kept search.
 *
 * @param query canonical address of the search without the question mark; empty = everything
 * @param mail whether its finds go into the daily mail
 * @param feedToken what the address of its feed holds, or null where there is none
 */
public record Watch(
    UUID id,
    int version,
    String label,
    String query,
    boolean mail,
    String feedToken,
    Instant createdAt) {

  /** Where the search is shown: a path of this server. */
  public String path() {
    return query.isEmpty() ? "/" : "/?" + query;
  }

  /** Where the feed is: a path of this server, or null. */
  public String feedPath() {
    return feedToken == null ? null : "/feeds/" + feedToken + ".atom";
  }
}

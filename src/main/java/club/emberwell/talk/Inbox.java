package club.emberwell.talk;

import club.emberwell.member.Actor;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** What a member's watches found. */
@ApplicationScoped
public class Inbox {
  private final WatchHitRepository hits;

  Inbox(WatchHitRepository hits) {
    this.hits = hits;
  }

  /** One page, newest first; {@code more} where another page follows. */
  public record Page(List<Find> finds, int page, boolean more) {}

  /** One statement. */
  @Transactional
  public Page page(Actor actor, int page) {
    int at = TalkService.clamp(page);
    List<Find> found =
        hits.inbox(
            TalkAccess.signedIn(actor), at * TalkLimits.INBOX_PAGE, TalkLimits.INBOX_PAGE + 1);
    boolean more = found.size() > TalkLimits.INBOX_PAGE;
    return new Page(more ? found.subList(0, TalkLimits.INBOX_PAGE) : found, at, more);
  }

  /** One statement; {@link TalkLimits#UNREAD} + 1 stands for more than that. */
  @Transactional
  public int unread(Actor actor) {
    return actor.signedIn() ? hits.unread(actor.memberId(), TalkLimits.UNREAD + 1) : 0;
  }

  /** Somebody else's find is left alone. */
  @Transactional
  public void markRead(Actor actor, long id) {
    hits.markRead(TalkAccess.signedIn(actor), id, Instant.now());
  }

  /**
   * Marks what was seen.
   *
   * @param upTo id of the newest find that was on the page
   */
  @Transactional
  public void markAllRead(Actor actor, long upTo) {
    hits.markAllRead(TalkAccess.signedIn(actor), upTo, Instant.now());
  }

  /**
   * Whatever of these was found for a member who has them in front of them now is read: one
   * statement.
   */
  @Transactional
  public void markSeen(Actor actor, Collection<UUID> entries) {
    hits.markSeen(TalkAccess.signedIn(actor), entries, Instant.now());
  }

  @Scheduled(every = "24h", delayed = "20m")
  @Transactional
  void forgetOld() {
    hits.deleteFoundBefore(Instant.now().minus(TalkLimits.INBOX_KEPT));
  }
}

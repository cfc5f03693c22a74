package club.emberwell.talk.watch;

import club.emberwell.entry.EntryAccess;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.talk.TalkLimits;
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
  private static final ListOrder FINDS = ListOrder.newestFirst("inbox", TalkLimits.INBOX_PAGE);

  private final WatchHitRepository hits;

  Inbox(WatchHitRepository hits) {
    this.hits = hits;
  }

  /** Newest first: one statement. */
  @Transactional
  public Slice<Find> page(Actor actor, Part part) {
    UUID member = EntryAccess.signedIn(actor);
    return Slice.read(part, FINDS, place -> hits.inbox(member, place), find -> List.of(find.id()));
  }

  /** One statement; {@link TalkLimits#UNREAD} + 1 stands for more than that. */
  @Transactional
  public int unread(Actor actor) {
    return actor.signedIn() ? hits.unread(actor.memberId(), TalkLimits.UNREAD + 1) : 0;
  }

  /** Somebody else's find is left alone. */
  @Transactional
  public void markRead(Actor actor, long id) {
    hits.markRead(EntryAccess.signedIn(actor), id, Instant.now());
  }

  /**
   * Marks what was seen.
   *
   * @param upTo id of the newest find that was on the page
   */
  @Transactional
  public void markAllRead(Actor actor, long upTo) {
    hits.markAllRead(EntryAccess.signedIn(actor), upTo, Instant.now());
  }

  /**
   * Whatever of these was found for a member who has them in front of them now is read: one
   * statement.
   */
  @Transactional
  public void markSeen(Actor actor, Collection<UUID> entries) {
    hits.markSeen(EntryAccess.signedIn(actor), entries, Instant.now());
  }

  @Scheduled(every = "24h", delayed = "20m")
  @Transactional
  void forgetOld() {
    hits.deleteFoundBefore(Instant.now().minus(TalkLimits.INBOX_KEPT));
  }
}

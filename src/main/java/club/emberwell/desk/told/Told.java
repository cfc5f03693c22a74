package club.emberwell.desk.told;

import club.emberwell.desk.DeskAccess;
import club.emberwell.member.Actor;
import club.emberwell.talk.TalkLimits;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.UUID;

/** How much of what the desk told a member is new to that member. */
@ApplicationScoped
@Transactional
public class Told {
  private final ToldRepository rows;

  Told(ToldRepository rows) {
    this.rows = rows;
  }

  /**
   * What is new since everything was read.
   *
   * @param decisions about the member's own entries
   * @param answers to the member's flags
   * @param checks that came due in the member's rooms
   * @param readTo whatever is later is new
   */
  public record News(int decisions, int answers, int checks, Instant readTo) {
    public boolean isNew(Instant at) {
      return at.isAfter(readTo);
    }

    public int total() {
      return decisions + answers + checks;
    }

    public boolean any() {
      return total() > 0;
    }
  }

  /** One statement; {@link TalkLimits#UNREAD} + 1 of either stands for more than that. */
  public News news(Actor actor) {
    return rows.news(DeskAccess.signedIn(actor), TalkLimits.UNREAD + 1);
  }

  /**
   * Everything up to then was read; an earlier time than before changes nothing.
   *
   * @param upTo when the page that showed it was made; never later than now
   */
  public void read(Actor actor, Instant upTo) {
    UUID member = DeskAccess.signedIn(actor);
    Instant now = Instant.now();
    rows.read(member, upTo.isAfter(now) ? now : upTo);
  }
}

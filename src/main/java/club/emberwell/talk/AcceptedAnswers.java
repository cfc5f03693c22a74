package club.emberwell.talk;

import club.emberwell.entry.Cause;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryLife;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;

/** Which answer of a question helped. */
@ApplicationScoped
public class AcceptedAnswers {
  private final TalkRepository entries;
  private final EntryLife life;

  AcceptedAnswers(TalkRepository entries, EntryLife life) {
    this.entries = entries;
    this.life = life;
  }

  /**
   * Says which answer helped; only who asked can, and may change it.
   *
   * @param answer a live answer of this question, or null to say that none did
   * @param version of the question the choice is based on, or null
   */
  @Transactional
  public TalkEntry accept(Actor actor, UUID question, UUID answer, Integer version) {
    return accept(actor, question, answer, version, Instant.now());
  }

  /** The same for what was said elsewhere at another time. */
  @Transactional
  public TalkEntry accept(Actor actor, UUID question, UUID answer, Integer version, Instant at) {
    EntryEntity asked = life.own(actor, TalkService.QUESTIONS, question, version);
    TalkEntity talk = entries.whole(question).orElseThrow();
    if (answer != null) {
      entries
          .whole(answer)
          .map(TalkEntity::entry)
          .filter(a -> question.equals(a.parentId()) && a.live())
          .orElseThrow(() -> new EntryUnknown("answer"));
    }
    if (!Objects.equals(talk.acceptedId(), answer)) {
      talk.accept(answer);
      life.touched(asked, EntryAction.ACCEPTED, Cause.of(actor, at));
    }
    return entries.named(question).orElseThrow();
  }
}

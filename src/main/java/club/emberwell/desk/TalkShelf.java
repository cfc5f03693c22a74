package club.emberwell.desk;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.talk.TalkModeration;
import club.emberwell.talk.TalkRevision;
import club.emberwell.talk.TalkService;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Questions, answers and notices. */
@ApplicationScoped
class TalkShelf implements Shelf {
  private final TalkModeration moderation;
  private final TalkService talk;

  TalkShelf(TalkModeration moderation, TalkService talk) {
    this.moderation = moderation;
    this.talk = talk;
  }

  @Override
  public boolean holds(ItemKind kind) {
    return kind == ItemKind.QUESTION || kind == ItemKind.ANSWER || kind == ItemKind.NOTICE;
  }

  @Override
  public void move(Actor actor, UUID id, Action action, String why) {
    moderation.decide(
        actor,
        id,
        switch (action) {
          case APPROVE, RESTORE -> TalkModeration.Decision.RESTORE;
          case HOLD -> TalkModeration.Decision.HOLD;
          case REMOVE -> TalkModeration.Decision.REMOVE;
        },
        why);
  }

  @Override
  public int version(Actor actor, UUID id) {
    return talk.get(actor, id).version();
  }

  @Override
  public void rewrite(Actor actor, UUID id, int version, String why) {
    TalkRevision then =
        talk.history(actor, id).stream()
            .filter(r -> r.version() == version)
            .findFirst()
            .orElseThrow(() -> new EntryUnknown("version"));
    talk.revise(actor, id, talk.get(actor, id).version(), then.written(), why);
  }
}

package club.emberwell.talk;

import club.emberwell.member.Actor;
import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.context.ApplicationScoped;

/** Trusts every member; stands back as soon as another policy is there. */
@DefaultBean
@ApplicationScoped
class TalkAtOnce implements TalkPolicy {
  @Override
  public TalkState firstState(Actor author, TalkKind kind, WrittenTalk written) {
    return TalkState.LIVE;
  }
}

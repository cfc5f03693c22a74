package club.emberwell.entry;

import club.emberwell.member.Actor;
import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.context.ApplicationScoped;

/** Trusts every member; stands back as soon as another policy is there. */
@DefaultBean
@ApplicationScoped
class LiveAtOnce implements EntryPolicy {
  @Override
  public EntryState firstState(Actor author, EntryKind kind) {
    return EntryState.LIVE;
  }
}

package club.emberwell.desk.rule;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryPolicy;
import club.emberwell.entry.EntryState;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;

/**
 * Lets the first entries of new members wait for a moderator's look. Moderators and trusted members
 * are never kept waiting.
 */
@ApplicationScoped
class FirstLook implements EntryPolicy {
  private final RuleRepository rules;

  FirstLook(RuleRepository rules) {
    this.rules = rules;
  }

  @Override
  public EntryState firstState(Actor author, EntryKind kind) {
    return EntryKind.POSTS.contains(kind) && waits(author) ? EntryState.WAITING : EntryState.LIVE;
  }

  private boolean waits(Actor author) {
    return !author.moderates() && rules.waits(author.memberId());
  }
}

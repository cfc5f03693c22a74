package club.emberwell.desk;

import club.emberwell.member.Actor;
import club.emberwell.report.Interpretation;
import club.emberwell.report.ReportPolicy;
import club.emberwell.report.ReportState;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.TalkPolicy;
import club.emberwell.talk.TalkState;
import club.emberwell.talk.WrittenTalk;
import jakarta.enterprise.context.ApplicationScoped;

/**
 * Lets the first entries of new members wait for a moderator's look. Moderators and trusted members
 * are never kept waiting.
 */
@ApplicationScoped
class FirstLook implements ReportPolicy, TalkPolicy {
  private final RuleRepository rules;

  FirstLook(RuleRepository rules) {
    this.rules = rules;
  }

  @Override
  public ReportState firstState(Actor author, Interpretation read) {
    return waits(author) ? ReportState.WAITING : ReportState.LIVE;
  }

  @Override
  public TalkState firstState(Actor author, TalkKind kind, WrittenTalk written) {
    return waits(author) ? TalkState.WAITING : TalkState.LIVE;
  }

  private boolean waits(Actor author) {
    return !author.moderates() && rules.waits(author.memberId());
  }
}

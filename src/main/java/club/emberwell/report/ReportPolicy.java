package club.emberwell.report;

import club.emberwell.member.Actor;

/** Decides in which state a new report begins. */
public interface ReportPolicy {
  /** LIVE, or WAITING for a moderator's first look. */
  ReportState firstState(Actor author, Interpretation read);
}

package club.emberwell.report;

import club.emberwell.catalog.Ban;

/** The work takes no settings: nothing was stored. */
public class ProhibitedWork extends RuntimeException {
  private final transient Ban ban;

  public ProhibitedWork(Ban ban) {
    super(ban.sentence());
    this.ban = ban;
  }

  /** Hazard, agent and source. */
  public Ban ban() {
    return ban;
  }
}

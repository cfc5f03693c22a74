package club.emberwell.report;

import java.time.Instant;

/** The report was public once; what is left of it is that it is gone, and since when. */
public class ReportGone extends RuntimeException {
  private final ReportState state;
  private final transient Instant since;

  public ReportGone(ReportState state, Instant since) {
    super(
        state == ReportState.WITHDRAWN
            ? "Its author has withdrawn this report."
            : "A moderator has removed this report.");
    this.state = state;
    this.since = since;
  }

  /** WITHDRAWN or REMOVED. */
  public ReportState state() {
    return state;
  }

  public Instant since() {
    return since;
  }
}

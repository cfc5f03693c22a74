package club.emberwell.report;

/** Where a report stands. Only LIVE ones are searched and counted. */
public enum ReportState {
  LIVE,
  /** Waits for a moderator's first look; its author sees it meanwhile. */
  WAITING,
  HELD,
  REMOVED,
  WITHDRAWN
}

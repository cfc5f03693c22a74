package club.emberwell.report;

import java.time.Instant;
import java.util.UUID;

/**
 * One entry of a report's history.
 *
 * @param editorId null = the server itself, which re-read the words
 * @param reason null where none was given
 */
public record Revision(
    int version,
    RevisionAction action,
    UUID editorId,
    String editorHandle,
    Instant at,
    String reason,
    ReportState state,
    WrittenReport written) {}

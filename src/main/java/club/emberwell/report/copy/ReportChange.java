package club.emberwell.report.copy;

import club.emberwell.report.ReportSnapshot;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * The newest change of a report.
 *
 * @param at when it was made
 * @param report as it is now; empty where nobody may see it any more, whatever became of it
 */
public record ReportChange(UUID id, Instant at, Optional<ReportSnapshot> report) {}

package club.emberwell.report;

import club.emberwell.laser.Laser;
import club.emberwell.report.reading.Work;
import java.util.UUID;

/**
 * A report in a few words: what a picture or a list of many needs to lead to it.
 *
 * @param number small integer identity, as in columns
 * @param author name
 */
public record ReportBrief(long number, UUID id, String author, Laser laser, Work work) {}

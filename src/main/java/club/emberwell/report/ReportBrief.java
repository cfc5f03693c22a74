package club.emberwell.report;

import club.emberwell.entry.Entry;
import club.emberwell.laser.Laser;
import club.emberwell.report.reading.Work;
import java.util.UUID;

/**
 * A report in a few words: what a picture or a list of many needs to lead to it.
 *
 * @param number small integer identity, as in columns
 * @param maker who posted it
 */
public record ReportBrief(long number, UUID id, Entry.Author maker, Laser laser, Work work) {
  /** Name of who posted it. */
  public String author() {
    return maker.handle();
  }
}

package club.emberwell.web.recipe;

import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.report.ReportPage.Row;
import club.emberwell.web.report.ReportPage.Said;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A recipe as its page shows it.
 *
 * @param rows settings as written and as understood
 * @param said its notes and other texts
 * @param steps of the job, in order
 * @param noticed in reading it
 */
record RecipeView(
    RecipeCard card,
    Job job,
    List<Row> rows,
    List<Said> said,
    List<String> steps,
    List<String> noticed,
    CautionsView cautions,
    Story story) {

  /**
   * What it is for, on what.
   *
   * @param machine its name, or null where it was removed
   * @param changed whether the machine is another than when this was written
   * @param dose what follows from the settings, or empty
   */
  record Job(
      String work, String process, String machine, String laser, boolean changed, String dose) {}

  /**
   * Where it came from and what became of it.
   *
   * @param from null = by hand
   * @param reports posted with it
   */
  record Story(int version, Instant written, Link from, List<Report> reports) {}

  /** Where its settings came from; href may be null. */
  record Link(String text, String href) {}

  /** A report posted with a revision of it. */
  record Report(UUID id, int version, Instant at) {}
}

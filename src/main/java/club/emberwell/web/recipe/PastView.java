package club.emberwell.web.recipe;

import club.emberwell.entry.FieldChange;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.report.ReportPage.Row;
import club.emberwell.web.report.ReportPage.Said;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A revision of a recipe as its page shows it.
 *
 * @param said its notes and other texts
 * @param steps of the job, in order
 * @param toNewest what the newest says differently
 */
record PastView(
    Head head,
    String told,
    String job,
    List<Row> rows,
    List<Said> said,
    List<String> steps,
    List<FieldChange> toNewest,
    CautionsView cautions) {
  /**
   * Which revision of which recipe.
   *
   * @param name of the recipe now
   * @param reason why it was made, or null
   */
  record Head(UUID id, String name, int version, Instant at, boolean newest, String reason) {}
}

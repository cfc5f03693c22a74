package club.emberwell.recipe;

import club.emberwell.entry.Origin;
import club.emberwell.member.Actor;
import club.emberwell.report.Posting;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenTrial;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Tells everybody how a recipe came out: a report that says what the recipe says. */
@ApplicationScoped
public class RecipeReports {
  private final Recipes recipes;
  private final RecipeRepository rows;
  private final ReportService reports;

  RecipeReports(Recipes recipes, RecipeRepository rows, ReportService reports) {
    this.recipes = recipes;
    this.rows = rows;
    this.reports = reports;
  }

  /**
   * A report that was posted with a recipe.
   *
   * @param version of the recipe then
   */
  public record Posted(UUID report, int version, Instant at) {}

  /**
   * Posts what a recipe says with how it came out. Its notes stay with its owner.
   *
   * @param id of the report, made by the client, or null
   * @param judged effect, quality and defects
   * @param notes of the report, for everybody, or null
   */
  @Transactional
  public StoredReport post(Actor actor, UUID recipe, UUID id, WrittenTrial judged, String notes) {
    Recipe from = recipes.get(actor, recipe);
    WrittenReport said = from.written().report(judged);
    WrittenReport written =
        new WrittenReport(
            said.machine(),
            null,
            said.work().with(WorkProperty.NOTES, notes),
            said.trials(),
            null,
            said.confirmed());
    return post(actor, recipe, new Posting(id, written, from.style(), Origin.HERE, null, false));
  }

  /**
   * Posts a report that was filled from a recipe, and notes that they belong together; a recipe
   * that is gone meanwhile holds no report back.
   */
  @Transactional
  public StoredReport post(Actor actor, UUID recipe, Posting posting) {
    StoredReport report = reports.post(actor, posting);
    recipes
        .find(actor, recipe)
        .ifPresent(from -> rows.reported(recipe, report.snapshot().id(), from.version()));
    return report;
  }

  /** The reports posted with one of the actor's recipes that stand still, the newest first. */
  @Transactional
  public List<Posted> of(Actor actor, UUID recipe) {
    recipes.get(actor, recipe);
    return rows.reports(recipe);
  }
}

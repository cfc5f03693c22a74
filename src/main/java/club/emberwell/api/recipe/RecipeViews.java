package club.emberwell.api.recipe;

import club.emberwell.api.view.CautionJson;
import club.emberwell.api.view.Noticed;
import club.emberwell.api.view.ReportJson.WorkJson;
import club.emberwell.api.view.ReportViews;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.recipe.Recipe;
import club.emberwell.report.reading.ReportCautions;
import jakarta.enterprise.context.ApplicationScoped;

/** Makes JSON of recipes. */
@ApplicationScoped
class RecipeViews {
  private final ReportViews reports;
  private final CatalogService catalog;

  RecipeViews(ReportViews reports, CatalogService catalog) {
    this.reports = reports;
    this.catalog = catalog;
  }

  /** A recipe among others. */
  RecipeJson among(Recipe recipe) {
    return RecipeJson.of(recipe, work(recipe), null);
  }

  /** A recipe by itself, with what to heed. */
  RecipeJson whole(Recipe recipe) {
    RecipeJson.Care care =
        new RecipeJson.Care(
            ReportCautions.of(recipe.work(), recipe.laser().source(), catalog.snapshot().cautions())
                .stream()
                .map(CautionJson::of)
                .toList(),
            Noticed.of(recipe.read().remarks()));
    return RecipeJson.of(recipe, work(recipe), care);
  }

  private WorkJson work(Recipe recipe) {
    return reports.work(recipe.work(), recipe.laser().source(), recipe.written().work());
  }
}

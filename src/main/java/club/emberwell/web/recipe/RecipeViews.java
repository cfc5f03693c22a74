package club.emberwell.web.recipe;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.recipe.CameFrom;
import club.emberwell.recipe.CameFrom.Way;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipeReports.Posted;
import club.emberwell.recipe.Revisions.Past;
import club.emberwell.remark.Coded;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.caution.MarkView;
import club.emberwell.web.recipe.RecipeView.Link;
import club.emberwell.web.report.ReportPage.Said;
import club.emberwell.web.report.SettingRows;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Puts recipes into words, in their owner's units. */
@ApplicationScoped
public class RecipeViews {
  private final Machines machines;
  private final CatalogService catalog;

  RecipeViews(Machines machines, CatalogService catalog) {
    this.machines = machines;
    this.catalog = catalog;
  }

  /** Recipes for a list; costs the same however many there are. */
  public List<RecipeCard> cards(Actor actor, List<Recipe> recipes) {
    Map<UUID, Machine> own = own(actor);
    return recipes.stream().map(recipe -> card(actor, recipe, own)).toList();
  }

  private Map<UUID, Machine> own(Actor actor) {
    return machines.of(actor).stream().collect(Collectors.toMap(Machine::id, Function.identity()));
  }

  private RecipeCard card(Actor actor, Recipe recipe, Map<UUID, Machine> own) {
    Machine machine = own.get(recipe.written().machine());
    String job =
        Stream.of(
                WorkText.of(recipe.work(), catalog.vocabulary(), actor.units()),
                recipe.work().process().label(),
                machine == null ? TrialText.laser(recipe.laser(), actor.units()) : machine.name())
            .collect(Collectors.joining(" · "));
    return new RecipeCard(
        recipe.id(),
        recipe.name(),
        TrialText.settings(recipe.settings(), actor.units()),
        job,
        recipe.folder(),
        recipe.usedAt(),
        MarkView.of(ReportCautions.of(recipe.work(), recipe.laser().source(), catalog.cautions())));
  }

  RecipeView page(Actor actor, Recipe recipe, List<Posted> reports) {
    UnitPreferences reader = actor.units();
    Catalog now = catalog.snapshot();
    Map<UUID, Machine> own = own(actor);
    return new RecipeView(
        card(actor, recipe, own),
        job(recipe, own.get(recipe.written().machine()), now, reader),
        SettingRows.of(recipe.written().settings(), recipe.settings().settings(), reader),
        said(recipe.work()),
        recipe.written().job().lines(),
        recipe.read().remarks().stream().map(SettingRows::noticed).toList(),
        CautionsView.of(
            ReportCautions.of(recipe.work(), recipe.laser().source(), now.cautions()),
            now.vocabulary(),
            reader),
        new RecipeView.Story(
            recipe.version(),
            recipe.entry().times().updated(),
            from(recipe.written().cameFrom()),
            reports.stream()
                .map(r -> new RecipeView.Report(r.report(), r.version(), r.at()))
                .toList()));
  }

  private static RecipeView.Job job(
      Recipe recipe, Machine machine, Catalog now, UnitPreferences reader) {
    return new RecipeView.Job(
        WorkText.of(recipe.work(), now.vocabulary(), reader),
        recipe.work().process().label(),
        machine == null ? null : machine.name(),
        TrialText.laser(recipe.laser(), reader),
        machine != null && !machine.laser().equals(recipe.laser()),
        TrialText.dose(recipe.settings(), reader));
  }

  /** A revision as it was. */
  PastView past(Actor actor, Past past) {
    UnitPreferences reader = actor.units();
    Catalog now = catalog.snapshot();
    Work work = past.read().work();
    TrialSnapshot settings = past.read().trials().get(0);
    Laser laser = past.read().laser();
    return new PastView(
        new PastView.Head(
            past.recipe().id(),
            past.recipe().name(),
            past.revision().version(),
            past.revision().at(),
            past.isNewest(),
            past.revision().reason()),
        TrialText.settings(settings, reader),
        Stream.of(
                WorkText.of(work, now.vocabulary(), reader),
                work.process().label(),
                TrialText.laser(laser, reader))
            .collect(Collectors.joining(" · ")),
        SettingRows.of(past.revision().written().settings(), settings.settings(), reader),
        said(work),
        past.revision().written().job().lines(),
        past.toNewest().fields(),
        CautionsView.of(
            ReportCautions.of(work, laser.source(), now.cautions()), now.vocabulary(), reader));
  }

  private static List<Said> said(Work work) {
    return work.values().entrySet().stream()
        .filter(value -> value.getValue() instanceof String)
        .map(value -> new Said(value.getKey().label(), value.getValue().toString()))
        .toList();
  }

  /** Null where it was written by hand. */
  static Link from(CameFrom from) {
    Way way =
        from == null || from.way() == null
            ? Way.HAND
            : Coded.of(Way.class, from.way()).orElse(Way.HAND);
    return switch (way) {
      case HAND -> null;
      case ANSWER -> new Link("what the club’s results say to start with", null);
      case TABLE -> new Link("a table that you read in", null);
      // of a copy of another server it may name what is not here
      case REPORT ->
          new Link("a report", from.report() == null ? null : "/reports/" + from.report());
      case GRID ->
          new Link(
              "the best test of your grid", from.grid() == null ? null : "/grids/" + from.grid());
      case RECIPE ->
          from.recipe() == null || from.version() == null
              ? new Link("another recipe", null)
              : new Link(
                  "revision %d of another recipe".formatted(from.version()),
                  RecipePages.path(from.recipe()) + "/revisions/" + from.version());
    };
  }
}

package club.emberwell.web.recipe;

import club.emberwell.bench.Machine;
import club.emberwell.entry.Reasons;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.CameFrom;
import club.emberwell.recipe.CameFrom.Way;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipeLimits;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.ReportForm;
import club.emberwell.web.report.ReportFormReader;
import club.emberwell.web.report.ReportFormValues;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** The fields of a recipe: those of a report without its result, and what is its own. */
final class RecipeForm {
  private static final String ID = "id";
  private static final String NAME = "name";
  private static final String FOLDER = "folder";
  private static final String REASON = "reason";

  private RecipeForm() {}

  /** For a new recipe, whose id makes it one however often it is sent. */
  static Form fresh(Actor actor, List<Machine> machines, JobFields job) {
    return kept(actor, machines, job)
        .add(Field.of(ID, "").hidden().value(UUID.randomUUID().toString()));
  }

  /** For one that is there. */
  static Form changing(Actor actor, List<Machine> machines, JobFields job, Recipe recipe) {
    Map<String, String> values =
        ReportFormValues.without(
            recipe.written().report(), recipe.read().remarks(), 0, property -> false);
    values.put(NAME, recipe.written().name());
    values.put(FOLDER, recipe.folder());
    values.putAll(JobFields.values(recipe.written().job()));
    return kept(actor, machines, job)
        .add(reason("What did you change, and why?"))
        .changing("recipe", recipe.version(), RecipePages.path(recipe.id()))
        .fill(values);
  }

  private static Form kept(Actor actor, List<Machine> machines, JobFields job) {
    return job.into(ReportForm.kept(machines, actor.units()), actor)
        .add(
            Field.of(NAME, "Name")
                .hint("What you call the job. Empty: what it is made of")
                .maxLength(RecipeLimits.NAME))
        .add(Field.of(FOLDER, "Folder").list("folders").maxLength(RecipeLimits.FOLDER));
  }

  static Field reason(String question) {
    return Field.of(REASON, question).maxLength(Reasons.MOST).required().aside();
  }

  static WrittenRecipe written(SentForm sent, NumberStyle style) {
    WrittenReport said = ReportFormReader.written(sent, null, style);
    return new WrittenRecipe(
        sent.text(NAME),
        sent.text(FOLDER),
        said.machine(),
        said.work(),
        said.trials().get(0).settings(),
        JobFields.written(sent),
        from(sent),
        said.confirmed());
  }

  static String reason(SentForm sent) {
    return sent.text(REASON);
  }

  /** What the form carries unseen of where its settings came from. */
  static CameFrom from(SentForm sent) {
    String way = sent.text("cameFrom.way");
    return way == null
        ? CameFrom.of(Way.HAND)
        : new CameFrom(
            way,
            sent.id("cameFrom.report"),
            number(sent, "cameFrom.trial"),
            sent.id("cameFrom.grid"),
            sent.id("cameFrom.recipe"),
            number(sent, "cameFrom.version"));
  }

  private static Integer number(SentForm sent, String name) {
    String text = sent.text(name);
    return text != null && text.matches("\\d{1,6}") ? Integer.valueOf(text) : null;
  }
}

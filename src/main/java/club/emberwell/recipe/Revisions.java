package club.emberwell.recipe;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.entry.Difference;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.Reasons;
import club.emberwell.entry.Revision;
import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.Interpretation;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** What a member's recipes said before, and how it is brought back. */
@ApplicationScoped
public class Revisions {
  private final Recipes recipes;
  private final RecipeRepository rows;
  private final RecipeReader reader;
  private final Machines machines;
  private final EntryLife life;

  Revisions(
      Recipes recipes,
      RecipeRepository rows,
      RecipeReader reader,
      Machines machines,
      EntryLife life) {
    this.recipes = recipes;
    this.rows = rows;
    this.reader = reader;
    this.machines = machines;
    this.life = life;
  }

  /** Every revision of one of the actor's recipes, newest first. */
  @Transactional
  public List<Revision<WrittenRecipe>> of(Actor actor, UUID id) {
    recipes.standing(actor, id);
    return life.history(id, WrittenRecipeConverter.SHAPE);
  }

  /**
   * A revision as it was.
   *
   * @param read what its words mean now
   * @param toNewest what the newest says differently
   */
  public record Past(
      Recipe recipe, Revision<WrittenRecipe> revision, Interpretation read, Difference toNewest) {
    public boolean isNewest() {
      return revision.version() == recipe.version();
    }

    /** What lists called it then. */
    public String name() {
      String name = revision.written().name();
      return name == null ? read.work().called() : name;
    }
  }

  /**
   * One revision, to look at.
   *
   * @throws EntryUnknown where there is none such
   */
  @Transactional
  public Past past(Actor actor, UUID id, int version) {
    RecipeEntity recipe = recipes.standing(actor, id);
    Revision<WrittenRecipe> then =
        find(id, version).orElseThrow(() -> new EntryUnknown("revision"));
    Laser laser =
        recipe.machineId().equals(then.written().machine())
            ? recipe.laser()
            : machines
                .even(actor.memberId(), then.written().machine())
                .map(Machine::laser)
                .orElse(null);
    return new Past(
        recipe.toRecipe(actor.handle(), reader),
        then,
        reader.interpret(then.written(), laser, recipe.numberStyle()),
        RecipeDifference.between(then.written(), recipe.written()));
  }

  private Optional<Revision<WrittenRecipe>> find(UUID id, int version) {
    return life.history(id, WrittenRecipeConverter.SHAPE).stream()
        .filter(revision -> revision.version() == version)
        .findFirst();
  }

  /**
   * Makes what an earlier revision says the newest again, as another revision. It stays in the
   * folder in which it lies now.
   *
   * @param version the version the change is based on
   * @param revision to be brought back
   * @throws EntryRefused where there is none such, or it cannot be read any more
   * @throws EntryChanged where the recipe was changed meanwhile
   */
  @Transactional
  public Recipe restore(Actor actor, UUID id, int version, Integer revision, String reason) {
    EntryEntity entry = life.editable(actor, Recipes.RECIPES, id, version);
    WrittenRecipe then =
        find(id, asked(revision))
            .map(Revision::written)
            .orElseThrow(
                () ->
                    new EntryRefused(
                        RemarkId.REVISION_UNKNOWN,
                        "/revision",
                        "This recipe has no such revision."));
    return recipes.rewrite(
        actor, entry, recipes.again(id, then), EntryAction.RESTORED, Reasons.needed(reason));
  }

  private static int asked(Integer revision) {
    if (revision == null) {
      throw new EntryRefused(RemarkId.REQUIRED, "/revision", "Say which revision.");
    }
    return revision;
  }

  /** A recipe with every revision, newest first. */
  public record Kept(Recipe recipe, List<Revision<WrittenRecipe>> revisions) {}

  /** All of the actor's recipes that still stand with all their revisions, the oldest first. */
  @Transactional
  public List<Kept> everything(Actor actor) {
    List<RecipeEntity> all = rows.everyStanding(EntryAccess.signedIn(actor));
    Map<UUID, List<Revision<WrittenRecipe>>> histories =
        life.histories(
            all.stream().map(recipe -> recipe.entry().id()).toList(), WrittenRecipeConverter.SHAPE);
    return all.stream()
        .map(
            recipe ->
                new Kept(
                    recipe.toRecipe(actor.handle(), reader), histories.get(recipe.entry().id())))
        .toList();
  }
}

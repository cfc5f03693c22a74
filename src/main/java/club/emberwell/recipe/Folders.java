package club.emberwell.recipe;

import club.emberwell.bench.FieldReader;
import club.emberwell.entry.Cause;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryLife;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.UUID;

/** Where a member's recipes lie: a folder is a name that recipes have in common. */
@ApplicationScoped
public class Folders {
  private final RecipeRepository recipes;
  private final RecipeReader reader;
  private final EntryLife life;

  Folders(RecipeRepository recipes, RecipeReader reader, EntryLife life) {
    this.recipes = recipes;
    this.reader = reader;
    this.life = life;
  }

  /** A folder with how many recipes lie in it. */
  public record Folder(String name, int recipes) {}

  /** The actor's folders by name. */
  @Transactional
  public List<Folder> of(Actor actor) {
    return recipes.folders(EntryAccess.signedIn(actor));
  }

  /**
   * Gives a folder another name; one that another folder has puts both together. Each recipe in it
   * gets a revision that says so.
   *
   * @return the folder as it is now
   * @throws EntryRefused with the pointers of the fields at fault
   */
  @Transactional
  public Folder rename(Actor actor, String from, String to) {
    UUID owner = EntryAccess.signedIn(actor);
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String old = in.text("/from", in.required("/from", from), RecipeLimits.FOLDER, false);
    String name = in.text("/to", in.required("/to", to), RecipeLimits.FOLDER, false);
    List<UUID> moved = old == null ? List.of() : recipes.in(owner, old);
    if (old != null && moved.isEmpty()) {
      in.add(Remark.error(RemarkId.FOLDER_UNKNOWN, "/from", "You have no such folder."));
    }
    Remarks.refuse(in.remarks());
    if (!old.equals(name)) {
      String reason = "The folder “%s” is now called “%s”.".formatted(old, name);
      moved.forEach(id -> move(actor, id, name, reason));
    }
    return of(actor).stream().filter(f -> f.name().equals(name)).findFirst().orElseThrow();
  }

  private void move(Actor actor, UUID id, String folder, String reason) {
    EntryEntity entry = life.own(actor, Recipes.RECIPES, id, null);
    RecipeEntity recipe = recipes.whole(id).orElseThrow();
    RecipeReader.Read read = reader.as(recipe, folder);
    recipe.take(read, recipe.numberStyle());
    life.rewritten(entry, RecipeEntity.words(read), EntryAction.EDITED, Cause.now(actor, reason));
  }
}

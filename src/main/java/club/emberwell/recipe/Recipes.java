package club.emberwell.recipe;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.StoredJson;
import club.emberwell.entry.Cause;
import club.emberwell.entry.ComesBack;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.Kind;
import club.emberwell.entry.NewEntry;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Reasons;
import club.emberwell.entry.Returned;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.recipe.RecipeRepository.Standing;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.reading.WrittenHash;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Keeps a member's recipes, which nobody else sees. Every write is one transaction with its
 * revision; whatever is thrown, nothing was stored.
 */
@ApplicationScoped
public class Recipes implements Kind, ComesBack {
  static final Set<EntryKind> RECIPES = Set.of(EntryKind.RECIPE);

  private final RecipeRepository recipes;
  private final RecipeReader reader;
  private final Origins origins;
  private final EntryLife life;

  Recipes(RecipeRepository recipes, RecipeReader reader, Origins origins, EntryLife life) {
    this.recipes = recipes;
    this.reader = reader;
    this.origins = origins;
    this.life = life;
  }

  /**
   * A recipe that was just stored.
   *
   * @param created false where the same one was there already
   */
  public record Saved(Recipe recipe, boolean created) {}

  /**
   * Keeps a new recipe.
   *
   * @throws EntryRefused with the pointers of the fields at fault
   * @throws ProhibitedWork where the work takes no settings
   */
  @Transactional
  public Saved add(Actor actor, RecipePosting posting) {
    UUID author = EntryAccess.signedIn(actor);
    String asked = WrittenHash.ofWords(posting.written().withConfirmed(null));
    if (life.isThere(posting.id(), EntryKind.RECIPE, author)) {
      RecipeEntity there = recipes.whole(posting.id()).orElseThrow();
      if (!there.askedHash().equals(asked)) {
        throw EntryLife.taken(EntryKind.RECIPE);
      }
      return new Saved(there.toRecipe(actor.handle(), reader), false);
    }
    requireRoom(actor);
    RecipeReader.Read read = fresh(actor, posting);
    UUID id = posting.id() == null ? UUID.randomUUID() : posting.id();
    Instant at = posting.at() == null ? Instant.now() : posting.at();
    NewEntry made = new NewEntry(id, EntryKind.RECIPE, null, Origin.HERE, at);
    RecipeEntity recipe =
        new RecipeEntity(life.begin(actor, made, RecipeEntity.words(read)), asked);
    recipe.take(read, posting.style());
    recipes.persistAndFlush(recipe);
    return new Saved(recipe.toRecipe(actor.handle(), reader), true);
  }

  /**
   * What is at fault with a recipe that would be added; nothing is thrown, so that whoever looks at
   * many goes on in the same transaction.
   */
  @Transactional
  public List<Remark> faults(Actor actor, RecipePosting posting) {
    try {
      fresh(actor, posting);
      return List.of();
    } catch (EntryRefused e) {
      return Remarks.errors(e.remarks());
    } catch (ProhibitedWork e) {
      return List.of(Remark.error(RemarkId.PROHIBITED, "/material", e.ban().sentence()));
    }
  }

  /** How many recipes the actor may still add. */
  @Transactional
  public int room(Actor actor) {
    long kept = recipes.countOf(EntryAccess.signedIn(actor));
    return (int) Math.max(0, RecipeLimits.PER_MEMBER - kept);
  }

  private RecipeReader.Read fresh(Actor actor, RecipePosting posting) {
    FieldReader in = new FieldReader(posting.style());
    CameFrom from = origins.read(actor, posting.written().cameFrom(), in);
    if (in.failed() && posting.askFirst()) {
      // a page carries it unseen: what is gone meanwhile must not hold back what was typed
      from = CameFrom.HAND;
    } else {
      Remarks.refuse(in.remarks());
    }
    RecipeReader.Read read = reader.read(actor.memberId(), posting, null);
    return new RecipeReader.Read(read.written().from(from), read.interpretation());
  }

  /**
   * Writes a recipe anew: another revision. Where its settings came from stays.
   *
   * @param version the version the change is based on
   * @param reason why, for its owner to read later
   * @throws EntryChanged where it was changed meanwhile
   */
  @Transactional
  public Recipe revise(Actor actor, UUID id, int version, RecipePosting posting, String reason) {
    EntryEntity entry = life.editable(actor, RECIPES, id, version);
    return rewrite(actor, entry, posting, EntryAction.EDITED, Reasons.needed(reason));
  }

  Recipe rewrite(
      Actor actor, EntryEntity entry, RecipePosting posting, EntryAction action, String reason) {
    if (entry.version() >= RecipeLimits.REVISIONS) {
      String detail =
          "This recipe has as many revisions as fit: %d. Make a new one of it."
              .formatted(RecipeLimits.REVISIONS);
      throw new EntryRefused(RemarkId.REVISIONS_MANY, "", detail);
    }
    RecipeEntity recipe = recipes.whole(entry.id()).orElseThrow();
    WrittenRecipe written = posting.written().from(recipe.written().cameFrom());
    RecipePosting kept =
        new RecipePosting(posting.id(), written, posting.style(), posting.at(), posting.askFirst());
    // what it was for once may be brought back, also where the machine was removed
    boolean again = action == EntryAction.RESTORED;
    WrittenRecipe before = again ? written : recipe.written();
    RecipeReader.Read read = reader.read(actor.memberId(), kept, before);
    recipe.take(read, posting.style());
    life.rewritten(entry, RecipeEntity.words(read), action, Cause.now(actor, reason));
    return recipe.toRecipe(actor.handle(), reader);
  }

  /** Earlier words, by how numbers are written now: they come from the same hand. */
  RecipePosting again(UUID id, WrittenRecipe then) {
    RecipeEntity recipe = recipes.whole(id).orElseThrow();
    return new RecipePosting(
        null, then.in(recipe.written().folder()), recipe.numberStyle(), null, false);
  }

  /** Writes down that its owner used a recipe; no change of what it says. */
  @Transactional
  public Recipe use(Actor actor, UUID id) {
    life.own(actor, RECIPES, id, null);
    RecipeEntity recipe = standing(actor, id);
    recipe.used(Instant.now());
    recipes.flush();
    return recipe.toRecipe(actor.handle(), reader);
  }

  /** Takes a recipe off the bench; it stays in the history. A second time does nothing. */
  public void withdraw(Actor actor, UUID id, Integer version) {
    life.withdraw(actor, RECIPES, id, version);
  }

  /**
   * One of the actor's recipes.
   *
   * @throws EntryUnknown where there is none, or it was withdrawn
   */
  @Transactional
  public Recipe get(Actor actor, UUID id) {
    return standing(actor, id).toRecipe(actor.handle(), reader);
  }

  /** The same, empty where there is none. */
  @Transactional
  public Optional<Recipe> find(Actor actor, UUID id) {
    return recipes
        .whole(id)
        .filter(recipe -> actor.is(recipe.entry().memberId()) && recipe.entry().live())
        .map(recipe -> recipe.toRecipe(actor.handle(), reader));
  }

  RecipeEntity standing(Actor actor, UUID id) {
    RecipeEntity recipe = recipes.whole(id).orElseThrow(() -> new EntryUnknown("recipe"));
    EntryAccess.standing(actor, recipe.entry());
    return recipe;
  }

  /** Those of the actor's recipes that still stand and are asked for. */
  @Transactional
  public Slice<Recipe> mine(Actor actor, RecipeQuery query, Part part) {
    UUID owner = EntryAccess.signedIn(actor);
    return Slice.read(
            part,
            query.sort().order(),
            place -> recipes.standing(owner, query, place),
            row -> row.place(query.sort()))
        .map(Standing::id)
        .all(ids -> all(actor, ids));
  }

  private List<Recipe> all(Actor actor, List<UUID> ids) {
    Map<UUID, RecipeEntity> found =
        recipes.all(ids).stream()
            .collect(Collectors.toMap(recipe -> recipe.entry().id(), Function.identity()));
    return ids.stream().map(id -> found.get(id).toRecipe(actor.handle(), reader)).toList();
  }

  @Override
  public EntryKind returning() {
    return EntryKind.RECIPE;
  }

  @Override
  @Transactional(value = Transactional.TxType.MANDATORY, dontRollbackOn = EntryRefused.class)
  public void comeBack(Actor actor, Returned from) {
    requireRoom(actor);
    EntryEntity entry =
        life.comeBack(
            actor,
            EntryKind.RECIPE,
            from,
            words -> RecipeEntity.words(reader.brought(actor.memberId(), words, from.style())));
    WrittenRecipe first = StoredJson.brought(first(from), WrittenRecipeConverter.SHAPE);
    RecipeEntity recipe = new RecipeEntity(entry, WrittenHash.ofWords(first.withConfirmed(null)));
    recipe.take(reader.brought(actor.memberId(), from.written(), from.style()), from.style());
    if (from.beside().usedAt() != null) {
      recipe.used(from.beside().usedAt());
    }
    recipes.persistAndFlush(recipe);
    from.beside().reports().forEach(r -> recipes.reported(from.id(), r.report(), r.version()));
  }

  private static String first(Returned from) {
    String words = from.past().get(0).written();
    return words == null ? from.written() : words;
  }

  private void requireRoom(Actor actor) {
    if (room(actor) == 0) {
      String detail = "You have as many recipes as fit: %d.".formatted(RecipeLimits.PER_MEMBER);
      throw new EntryRefused(RemarkId.RECIPES_MANY, "", detail);
    }
  }

  @Override
  public Set<EntryKind> kinds() {
    return RECIPES;
  }

  @Override
  @Transactional
  public void rewrite(Actor actor, UUID id, int version, String written, String reason) {
    EntryEntity entry = life.editable(actor, RECIPES, id, version);
    WrittenRecipe then = StoredJson.read(written, WrittenRecipeConverter.SHAPE);
    rewrite(actor, entry, again(id, then), EntryAction.RESTORED, reason);
  }
}

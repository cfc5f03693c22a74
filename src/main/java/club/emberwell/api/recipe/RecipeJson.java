package club.emberwell.api.recipe;

import club.emberwell.api.view.CautionJson;
import club.emberwell.api.view.DerivedJson;
import club.emberwell.api.view.LaserJson;
import club.emberwell.api.view.Noticed;
import club.emberwell.api.view.ReportJson.WorkJson;
import club.emberwell.api.view.Sendable;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.api.view.Times;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryState;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.WrittenRecipe;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A recipe.
 *
 * @param laser of its machine, as it was when the recipe was written last
 * @param work what it is for, as read
 * @param written as it can be sent again
 * @param care left out in lists
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RecipeJson(
    @JsonUnwrapped Standing standing,
    @JsonUnwrapped Times times,
    LaserJson laser,
    @JsonUnwrapped WorkJson work,
    @JsonUnwrapped Told told,
    @JsonSerialize(using = Sendable.class) WrittenRecipe written,
    @JsonUnwrapped @Nullable Care care) {

  /**
   * Which recipe in which state.
   *
   * @param title its name, or what lists call one without
   * @param folder in which it lies, or left out
   * @param usedAt when its owner last said that they used it
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Standing(
      UUID id,
      int version,
      EntryState state,
      String title,
      @Nullable String folder,
      @Nullable Instant usedAt) {}

  /** What the laser is told, and what follows from it. */
  record Told(SettingsJson settings, DerivedJson derived) {}

  /**
   * What to heed.
   *
   * @param cautions of the work, bans first; never says that something is safe
   */
  record Care(List<CautionJson> cautions, @JsonUnwrapped Noticed noticed) {}

  static RecipeJson of(Recipe recipe, WorkJson work, Care care) {
    Entry.Times at = recipe.entry().times();
    return new RecipeJson(
        new Standing(
            recipe.id(),
            recipe.version(),
            recipe.entry().state(),
            recipe.name(),
            recipe.folder(),
            recipe.usedAt()),
        new Times(at.created(), at.updated()),
        LaserJson.of(recipe.laser()),
        work,
        new Told(
            SettingsJson.of(recipe.settings().settings(), recipe.written().settings()),
            DerivedJson.of(recipe.settings().derived())),
        recipe.written(),
        care);
  }
}

package club.emberwell.web.recipe;

import club.emberwell.web.caution.MarkView;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A recipe in a list.
 *
 * @param told its settings in a line
 * @param job what it is for: work, process and machine
 * @param folder or null
 * @param mark its heaviest caution, or null
 * @param used when it was used last, null = never
 */
public record RecipeCard(
    UUID id,
    String name,
    String told,
    String job,
    String folder,
    Instant used,
    @Nullable MarkView mark) {
  /** Where all recipes of its folder stand. */
  public String getShelf() {
    return RecipePages.shelf(folder);
  }
}

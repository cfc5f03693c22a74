package club.emberwell.recipe;

import club.emberwell.entry.Difference;
import java.util.Map;

/** What differs between two revisions of a recipe, field by field. */
public final class RecipeDifference {
  private RecipeDifference() {}

  /** Empty where both say the same; what was confirmed does not count. */
  public static Difference between(WrittenRecipe before, WrittenRecipe after) {
    return Difference.between(fields(before), fields(after));
  }

  private static Map<String, String> fields(WrittenRecipe written) {
    return Difference.fields(written.withConfirmed(null).from(null));
  }
}

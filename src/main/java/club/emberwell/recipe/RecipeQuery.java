package club.emberwell.recipe;

import club.emberwell.bench.FieldReader;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remarks;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Which of a member's recipes are wanted.
 *
 * @param words lower case; each must stand in what a recipe says or in what its machine is called
 * @param folder null = in any or in none
 */
public record RecipeQuery(List<String> words, String folder, RecipeSort sort) {
  public static final RecipeQuery ALL = new RecipeQuery(List.of(), null, RecipeSort.USED);

  /**
   * Reads what was asked for; null or blank = not asked.
   *
   * @param sort code of a {@link RecipeSort}
   * @throws EntryRefused for a text that is too long and for an unknown order
   */
  public static RecipeQuery read(String text, String folder, String sort) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String words = in.text("/q", text, RecipeLimits.SEARCH, false);
    String lies = in.text("/folder", folder, RecipeLimits.FOLDER, false);
    RecipeSort order =
        in.choice(
            "/sort",
            sort,
            code -> Coded.of(RecipeSort.class, code),
            RecipeSort.values(),
            RecipeSort::code);
    Remarks.refuse(in.remarks());
    return new RecipeQuery(
        words == null ? List.of() : split(words), lies, order == null ? RecipeSort.USED : order);
  }

  private static List<String> split(String words) {
    return Arrays.stream(words.toLowerCase(Locale.ROOT).split("\\s+"))
        .limit(RecipeLimits.SEARCH_WORDS)
        .toList();
  }

  /** The words as a statement takes them. */
  List<String> patterns() {
    return words.stream().map(word -> "%" + word.replaceAll("[\\\\%_]", "\\\\$0") + "%").toList();
  }
}

package club.emberwell.recipe.table;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A table with what its columns are.
 *
 * @param id made by the client, or null: the same row under the same id is one recipe
 * @param table its text, CSV with a line of names
 * @param columns what they hold; those that are left out are not read
 * @param machine of the rows that name none
 * @param process of the rows that name none
 * @param folder of the rows that name none
 */
public record WrittenTable(
    @Nullable UUID id,
    @Nullable String table,
    @Nullable List<WrittenColumn> columns,
    @Nullable UUID machine,
    @Nullable String process,
    @Nullable String folder) {

  /**
   * A column.
   *
   * @param column its number, 0 = the first
   * @param field what it holds: {@code name}, {@code material}, {@code settings.speed} …
   * @param unit of the numbers in it that have none
   */
  public record WrittenColumn(
      @Nullable Integer column, @Nullable String field, @Nullable String unit) {}
}

package club.emberwell.recipe.table;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Machines;
import club.emberwell.entry.EntryAccess;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipeLimits;
import club.emberwell.recipe.RecipePosting;
import club.emberwell.recipe.Recipes;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.recipe.table.Outcome.Fitting;
import club.emberwell.recipe.table.Outcome.Refused;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenHash;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Makes recipes of the rows of a table: each by itself, so that one at fault stops no other. */
@ApplicationScoped
public class TableRecipes {
  private final Recipes recipes;
  private final Machines machines;

  TableRecipes(Recipes recipes, Machines machines) {
    this.recipes = recipes;
    this.machines = machines;
  }

  /**
   * What a table would come to; nothing is stored.
   *
   * @throws EntryRefused where the table or what is said of its columns cannot be read
   */
  public Outcome preview(Actor actor, WrittenTable written, NumberStyle style) {
    return each(actor, written, style, false);
  }

  /**
   * Keeps every row that fits as a recipe.
   *
   * @throws EntryRefused as {@link #preview}
   */
  public Outcome store(Actor actor, WrittenTable written, NumberStyle style) {
    return each(actor, written, style, true);
  }

  private Outcome each(Actor actor, WrittenTable written, NumberStyle style, boolean store) {
    EntryAccess.signedIn(actor);
    Table table = Table.read(written.table());
    Columns columns = Columns.read(written.columns(), table);
    ownMachine(actor, written.machine());
    RowReader reader = new RowReader(written, columns, machines.of(actor));
    int room = recipes.room(actor);
    List<Fitting> fitting = new ArrayList<>();
    List<Refused> refused = new ArrayList<>();
    Map<String, Integer> before = new HashMap<>();
    for (int i = 0; i < table.rows().size(); i++) {
      RowReader.Row row = reader.read(table.rows().get(i));
      String words = WrittenHash.ofWords(row.written());
      UUID id = id(written.id(), words, before.merge(words, 1, Integer::sum));
      RecipePosting posting = new RecipePosting(id, row.written(), style, null, false);
      List<Remark> wrong = wrong(actor, row, posting, fitting.size() < room);
      if (wrong.isEmpty()) {
        Recipe made = store ? recipes.add(actor, posting).recipe() : null;
        fitting.add(new Fitting(i + 1, called(row.written()), made));
      } else {
        refused.add(new Refused(i + 1, wrong));
      }
    }
    return new Outcome(table, fitting, refused);
  }

  /** Known beforehand: what is thrown would undo the rows before. */
  private List<Remark> wrong(
      Actor actor, RowReader.Row row, RecipePosting posting, boolean hasRoom) {
    List<Remark> wrong = new ArrayList<>(row.remarks());
    List<String> told = wrong.stream().map(Remark::field).toList();
    recipes.faults(actor, posting).stream()
        .filter(remark -> !told.contains(remark.field()))
        .forEach(wrong::add);
    if (!hasRoom && wrong.isEmpty()) {
      String detail = "You have as many recipes as fit: %d.".formatted(RecipeLimits.PER_MEMBER);
      wrong.add(Remark.error(RemarkId.RECIPES_MANY, "", detail));
    }
    return wrong;
  }

  private void ownMachine(Actor actor, UUID machine) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    if (machine != null && machines.find(actor.memberId(), machine).isEmpty()) {
      in.add(Remark.error(RemarkId.MACHINE_UNKNOWN, "/machine", "You have no such machine."));
    }
    Remarks.refuse(in.remarks());
  }

  /** Without a name by its material, as lists call it. */
  private static String called(WrittenRecipe written) {
    return written.name() == null ? written.work().text(WorkProperty.MATERIAL) : written.name();
  }

  /** The same row of the same table is one recipe, however often it is sent. */
  private static UUID id(UUID table, String words, int time) {
    return table == null
        ? null
        : UUID.nameUUIDFromBytes(
            "%s %s %d".formatted(table, words, time).getBytes(StandardCharsets.UTF_8));
  }
}

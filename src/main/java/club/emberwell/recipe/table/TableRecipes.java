package club.emberwell.recipe.table;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Machines;
import club.emberwell.entry.EntryAccess;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipePosting;
import club.emberwell.recipe.Recipes;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.recipe.table.Outcome.Fitting;
import club.emberwell.recipe.table.Outcome.Refused;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.reading.WorkProperty;
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

  /** What becomes of one row. */
  @FunctionalInterface
  private interface Deed {
    Recipe with(RecipePosting posting);
  }

  /**
   * What a table would come to; nothing is stored.
   *
   * @throws EntryRefused where the table or what is said of its columns cannot be read
   */
  public Outcome preview(Actor actor, WrittenTable written, NumberStyle style) {
    return each(actor, written, style, look(actor));
  }

  private Deed look(Actor actor) {
    return posting -> {
      recipes.preview(actor, posting);
      return null;
    };
  }

  /**
   * Keeps every row that fits as a recipe.
   *
   * @throws EntryRefused as {@link #preview}
   */
  public Outcome store(Actor actor, WrittenTable written, NumberStyle style) {
    return each(actor, written, style, posting -> recipes.add(actor, posting).recipe());
  }

  private Outcome each(Actor actor, WrittenTable written, NumberStyle style, Deed deed) {
    EntryAccess.signedIn(actor);
    Table table = Table.read(written.table());
    Columns columns = Columns.read(written.columns(), table);
    ownMachine(actor, written.machine());
    RowReader reader = new RowReader(written, columns, machines.of(actor));
    List<Fitting> fitting = new ArrayList<>();
    List<Refused> refused = new ArrayList<>();
    Map<List<String>, Integer> before = new HashMap<>();
    for (int i = 0; i < table.rows().size(); i++) {
      List<String> cells = table.rows().get(i);
      RowReader.Row row = reader.read(cells);
      UUID id = id(written.id(), cells, before.merge(cells, 1, Integer::sum));
      RecipePosting posting = new RecipePosting(id, row.written(), style, null, false);
      List<Remark> wrong = new ArrayList<>(row.remarks());
      try {
        // what is at fault is only looked at, so that all that is wrong with it is told at once
        Recipe made = (wrong.isEmpty() ? deed : look(actor)).with(posting);
        if (wrong.isEmpty()) {
          fitting.add(new Fitting(i + 1, called(row.written(), made), made));
        }
      } catch (EntryRefused e) {
        List<String> told = wrong.stream().map(Remark::field).toList();
        Remarks.errors(e.remarks()).stream()
            .filter(remark -> !told.contains(remark.field()))
            .forEach(wrong::add);
      } catch (ProhibitedWork e) {
        wrong.add(Remark.error(RemarkId.PROHIBITED, "/material", e.ban().sentence()));
      }
      if (!wrong.isEmpty()) {
        refused.add(new Refused(i + 1, wrong));
      }
    }
    return new Outcome(table, fitting, refused);
  }

  private void ownMachine(Actor actor, UUID machine) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    if (machine != null && machines.find(actor.memberId(), machine).isEmpty()) {
      in.add(Remark.error(RemarkId.MACHINE_UNKNOWN, "/machine", "You have no such machine."));
    }
    Remarks.refuse(in.remarks());
  }

  private static String called(WrittenRecipe written, Recipe made) {
    return made != null
        ? made.name()
        : written.name() == null
            ? String.valueOf(
                written.work().text(WorkProperty.MATERIAL))
            : written.name();
  }

  /** The same row of the same table is one recipe, however often it is sent. */
  private static UUID id(UUID table, List<String> cells, int time) {
    return table == null
        ? null
        : UUID.nameUUIDFromBytes(
            (table + "\n" + time + "\n" + String.join("\u0000", cells))
                .getBytes(StandardCharsets.UTF_8));
  }
}

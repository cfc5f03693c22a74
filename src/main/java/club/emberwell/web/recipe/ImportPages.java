package club.emberwell.web.recipe;

import club.emberwell.bench.Machines;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.table.Outcome;
import club.emberwell.recipe.table.Table;
import club.emberwell.recipe.table.TableField;
import club.emberwell.recipe.table.TableRecipes;
import club.emberwell.recipe.table.WrittenTable;
import club.emberwell.remark.EntryRefused;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A table of one's own, step by step: chosen, its columns named, looked at, kept. The page carries
 * the table along, so nothing lies on the server in between.
 */
@Path("/recipes/import")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class ImportPages extends Pages {
  private static final int UNPROCESSABLE = 422;
  private static final String STEP = "step";

  private final TableRecipes tables;
  private final Machines machines;

  ImportPages(TableRecipes tables, Machines machines) {
    this.tables = tables;
    this.machines = machines;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance choose(Form form);

    static native TemplateInstance columns(Mapping mapping);

    static native TemplateInstance kept(Outcome outcome, Mapping mapping);
  }

  /**
   * The columns with what they hold.
   *
   * @param outcome what it would come to; null before anybody asked
   */
  record Mapping(Form form, List<Column> columns, Outcome outcome) {}

  /** A column. */
  record Column(Field field, Field unit) {
    /** Words have no unit; what is chosen in place of them is asked again. */
    public boolean isMeasured() {
      return unit.isFailed()
          || TableField.of(field.getValue()).map(TableField::isQuantity).orElse(true);
    }
  }

  @GET
  public TemplateInstance choose() {
    return Templates.choose(ImportForm.blank());
  }

  /** What follows depends on the button: nothing named = the columns are asked for. */
  @POST
  public Response next(SentForm sent) {
    String text = ImportForm.table(sent);
    Table table;
    try {
      table = Table.read(text);
    } catch (EntryRefused e) {
      page.fail();
      Form form = ImportForm.blank().remarks(e.remarks());
      if (text != null) {
        form.field(ImportForm.TABLE).value(text);
      }
      return Response.status(UNPROCESSABLE).entity(Templates.choose(form)).build();
    }
    String step = sent.text(STEP);
    if (step == null) {
      return Response.ok(Templates.columns(mapping(fresh(text, table), table, null))).build();
    }
    boolean store = step.equals("store");
    return take(
            sent, () -> fresh(text, table), form -> Templates.columns(mapping(form, table, null)))
        .store(s -> outcome(s, table, store))
        .show(
            (form, outcome) ->
                store
                    ? Templates.kept(outcome, mapping(form, table, outcome))
                    : Templates.columns(mapping(form, table, outcome)));
  }

  private Form fresh(String text, Table table) {
    return ImportForm.of(text, table, machines.of(actor()));
  }

  private static Mapping mapping(Form form, Table table, Outcome outcome) {
    List<Column> columns =
        IntStream.range(0, table.header().size())
            .mapToObj(
                i ->
                    new Column(
                        form.field(ImportForm.name(i, "field")),
                        form.field(ImportForm.name(i, "unit"))))
            .toList();
    return new Mapping(form, columns, outcome);
  }

  private Outcome outcome(SentForm sent, Table table, boolean store) {
    Actor actor = actor();
    WrittenTable written = ImportForm.written(sent, table);
    NumberStyle style = actor.units().style();
    try {
      return store ? tables.store(actor, written, style) : tables.preview(actor, written, style);
    } catch (EntryRefused e) {
      throw ImportForm.atColumns(e, sent, table);
    }
  }

  /** The rows that do not fit, with why, as a table that can be mended and read in again. */
  @POST
  @Path("refused")
  public Response refused(SentForm sent) {
    Table table = Table.read(ImportForm.table(sent));
    return Response.ok(outcome(sent, table, false).toMend(), "text/csv;charset=UTF-8")
        .header("Content-Disposition", "attachment; filename=\"recipes-to-mend.csv\"")
        .header("Cache-Control", "no-store")
        .build();
  }
}

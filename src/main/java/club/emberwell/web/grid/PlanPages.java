package club.emberwell.web.grid;

import club.emberwell.bench.Machine;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.grid.GridPosting;
import club.emberwell.grid.GridService;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.plan.GridPlanner;
import club.emberwell.grid.plan.GridPlanner.Planned;
import club.emberwell.laser.Setting;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.SettingFields;
import club.emberwell.web.report.Words;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;

/** Plans a grid: what it comes to stands above the form, whose whole state is the address. */
@Path("/grids")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class PlanPages extends Pages {
  private static final String PATH = "/grids/plan?";
  private static final List<String> NEEDED = List.of("machine", "material", "process");

  private final ConsensusService consensus;
  private final GridPlanner planner;
  private final GridService grids;
  private final CatalogService catalog;
  private final Words words;

  PlanPages(
      ConsensusService consensus,
      GridPlanner planner,
      GridService grids,
      CatalogService catalog,
      Words words) {
    this.consensus = consensus;
    this.planner = planner;
    this.grids = grids;
    this.catalog = catalog;
    this.words = words;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance plan(Page page);
  }

  /**
   * The page in one state.
   *
   * @param plan null where there is nothing to plan yet, or it cannot be planned
   */
  record Page(PlanFields fields, Words.Lists words, PlanView plan, Kept kept) {}

  /**
   * What is kept of a plan, and where one goes on from it.
   *
   * @param hidden the plan as it stands, field by field
   * @param fewer address of a coarser plan, or null
   * @param more address of a finer plan, or null
   */
  record Kept(List<QueryString.Pair> hidden, String fewer, String more) {
    static final Kept NOTHING = new Kept(List.of(), null, null);
  }

  @GET
  @Path("plan")
  public Response plan(@Context UriInfo uri) {
    Actor actor = actor();
    SentForm sent = new SentForm(uri.getQueryParameters());
    List<Machine> machines = consensus.machines(actor).all();
    Supplier<Form> form = () -> PlanForm.of(machines);
    boolean asked = NEEDED.stream().noneMatch(name -> sent.text(name) == null);
    if (!asked || machines.isEmpty()) {
      return Response.ok(shown(form.get().fill(sent.values()), null, Kept.NOTHING)).build();
    }
    return take(sent, form, filled -> shown(filled, null, Kept.NOTHING))
        .store(s -> planner.plan(actor, PlanForm.written(s), actor.units().style()))
        .show(
            (filled, planned) ->
                shown(
                    filled,
                    PlanViews.of(
                        planned, name(machines, sent), catalog.vocabulary(), actor.units()),
                    kept(sent, planned, actor.units())));
  }

  private TemplateInstance shown(Form form, PlanView view, Kept kept) {
    return Templates.plan(new Page(PlanFields.of(form), words.lists(), view, kept));
  }

  private static String name(List<Machine> machines, SentForm sent) {
    UUID id = sent.id("machine");
    return machines.stream()
        .filter(machine -> machine.id().equals(id))
        .map(Machine::name)
        .findFirst()
        .orElse(null);
  }

  /** Keeps a plan as it was shown. */
  @POST
  public Response save(SentForm sent) {
    Actor actor = actor();
    List<Machine> machines = consensus.machines(actor).all();
    return take(sent, () -> PlanForm.of(machines), form -> shown(form, null, Kept.NOTHING))
        .store(
            s ->
                grids.save(
                    actor, new GridPosting(s.id("id"), PlanForm.written(s), actor.units().style())))
        .then(saved -> "/grids/" + saved.grid().id() + "/sheet?done=saved");
  }

  /**
   * Everything that was typed, with the values that were planned: what is kept is what was seen.
   */
  private static Kept kept(SentForm sent, Planned planned, UnitPreferences reader) {
    Map<String, String> values = new TreeMap<>(sent.values());
    GridPlan plan = planned.plan();
    values.put(PlanForm.ACROSS + PlanForm.SETTING, plan.axes().across().setting().code());
    values.put(PlanForm.ACROSS + PlanForm.VALUES, AxisField.typed(plan.axes().across(), reader));
    values.put(PlanForm.DOWN + PlanForm.SETTING, plan.axes().down().setting().code());
    values.put(PlanForm.DOWN + PlanForm.VALUES, AxisField.typed(plan.axes().down(), reader));
    for (Setting setting : Setting.values()) {
      Object value = plan.base().values().get(setting);
      if (value == null) {
        values.remove(SettingFields.name(setting));
      } else {
        values.put(SettingFields.name(setting), AxisField.typed(value, reader));
      }
    }
    values.put("id", UUID.randomUUID().toString());
    List<QueryString.Pair> hidden = new ArrayList<>();
    values.forEach((name, value) -> hidden.add(new QueryString.Pair(name, value)));
    boolean byHand =
        sent.text(PlanForm.ACROSS + PlanForm.VALUES) != null
            && sent.text(PlanForm.DOWN + PlanForm.VALUES) != null;
    return new Kept(hidden, byHand ? null : step(sent, 1), byHand ? null : step(sent, -1));
  }

  /** The same with the next coarser or finer step; null where there is none. */
  private static String step(SentForm sent, int by) {
    String now = sent.text(PlanForm.RESOLUTION);
    int at = PlanForm.STEPS.indexOf(now == null ? PlanForm.USUAL : now) + by;
    if (at < 0 || at >= PlanForm.STEPS.size()) {
      return null;
    }
    Map<String, String> values = new TreeMap<>(sent.values());
    values.put(PlanForm.RESOLUTION, PlanForm.STEPS.get(at));
    StringJoiner address = new StringJoiner("&", PATH, "");
    values.forEach(
        (name, value) -> {
          if (!value.isEmpty()) {
            address.add(name + "=" + QueryString.encoded(value));
          }
        });
    return address.toString();
  }
}

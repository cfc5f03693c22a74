package club.emberwell.web.bench;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.factor.MachineFactor;
import club.emberwell.eyewear.Glasses;
import club.emberwell.eyewear.OwnEyewear;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.recipe.RecipeQuery;
import club.emberwell.recipe.Recipes;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.web.about.StepList;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.recipe.RecipeCard;
import club.emberwell.web.recipe.RecipeViews;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jboss.resteasy.reactive.RestQuery;

/** My bench: the machines somebody owns and what they posted. */
@Path(BenchPages.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class BenchPages extends Pages {
  static final String PATH = "/bench";

  private static final String FROM = "from";
  private static final String DONE = "done";

  /** Recipes used last that lie in sight. */
  private static final int RECIPES = 3;

  private final Machines machines;
  private final OwnEyewear eyewear;
  private final OwnResults results;
  private final ConsensusService consensus;
  private final NewcomerSteps newcomer;
  private final Recipes recipes;
  private final RecipeViews recipeViews;

  BenchPages(
      Machines machines,
      OwnEyewear eyewear,
      OwnResults results,
      ConsensusService consensus,
      NewcomerSteps newcomer,
      Recipes recipes,
      RecipeViews recipeViews) {
    this.machines = machines;
    this.recipes = recipes;
    this.recipeViews = recipeViews;
    this.eyewear = eyewear;
    this.results = results;
    this.consensus = consensus;
    this.newcomer = newcomer;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance bench(Bench bench);
  }

  /**
   * What lies on the bench.
   *
   * @param steps what a newcomer does first; null where nothing is left or it is put away
   * @param recipes those used last
   * @param begun true right after the first machine was added
   */
  record Bench(
      StepList steps,
      List<RecipeCard> recipes,
      List<MachineCard> machines,
      OwnResults.Results results,
      boolean begun) {}

  @GET
  public TemplateInstance bench(
      @RestQuery(FROM) @DefaultValue("0") String from,
      @RestQuery(DONE) String done,
      @Context UriInfo uri) {
    Actor actor = actor();
    List<Glasses> pairs = eyewear.of(actor);
    List<MachineCard> cards =
        machines.of(actor).stream()
            .map(m -> MachineCard.of(m, actor.units(), pairs, factor(m)))
            .toList();
    OwnResults.Results own = results.of(uri.getQueryParameters(), from, Set.of(FROM, DONE), actor);
    boolean begun = "added".equals(done) && cards.size() == 1;
    say(done, begun);
    return Templates.bench(
        new Bench(newcomer.of(actor, !cards.isEmpty()), lastUsed(actor), cards, own, begun));
  }

  @POST
  @Path("first-steps")
  public Response putStepsAway() {
    newcomer.putAway(actor());
    return to(PATH);
  }

  private List<RecipeCard> lastUsed(Actor actor) {
    Part few = new Part(0, null, RECIPES, false);
    return recipeViews.cards(actor, recipes.mine(actor, RecipeQuery.ALL, few).rows());
  }

  /** Empty too while there is no index to find it in. */
  private Optional<String> factor(Machine machine) {
    try {
      return consensus
          .factors()
          .of(machine.standing().number(), machine.laser())
          .map(MachineFactor::sentence);
    } catch (IndexNotReady e) {
      return Optional.empty();
    }
  }

  private void say(String done, boolean begun) {
    if ("added".equals(done) && !begun) {
      page.say("The machine is on your bench.");
    } else if ("changed".equals(done)) {
      page.say("Saved. Earlier reports do not change.");
    } else if ("deleted".equals(done)) {
      page.say("The machine is removed. Its reports stay.");
    }
  }
}

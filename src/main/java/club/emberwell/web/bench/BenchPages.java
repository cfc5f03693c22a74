package club.emberwell.web.bench;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.factor.MachineFactor;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.report.OwnReports;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestQuery;

/** My bench: the machines somebody owns and what they posted. */
@Path("/bench")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class BenchPages extends Pages {
  private final Machines machines;
  private final OwnReports reports;
  private final CatalogService catalog;
  private final ConsensusService consensus;

  BenchPages(
      Machines machines, OwnReports reports, CatalogService catalog, ConsensusService consensus) {
    this.machines = machines;
    this.reports = reports;
    this.catalog = catalog;
    this.consensus = consensus;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance bench(Bench bench);
  }

  /**
   * What lies on the bench.
   *
   * @param begun true right after the first machine was added
   */
  record Bench(List<MachineCard> machines, List<OwnReport> reports, Pager pager, boolean begun) {}

  @GET
  public TemplateInstance bench(@RestQuery @DefaultValue("0") String from, @RestQuery String done) {
    Actor actor = actor();
    Vocabulary vocabulary = catalog.vocabulary();
    List<MachineCard> cards =
        machines.of(actor).stream().map(m -> MachineCard.of(m, actor.units(), factor(m))).toList();
    Slice<ReportSnapshot> own = reports.of(actor, Pager.part(from));
    List<OwnReport> lines =
        own.rows().stream().map(r -> OwnReport.of(r, vocabulary, actor.units())).toList();
    boolean begun = "added".equals(done) && cards.size() == 1;
    say(done, begun);
    return Templates.bench(new Bench(cards, lines, Pager.of(own, BenchPages::address), begun));
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

  private static String address(int number) {
    return number == 0 ? "/bench#reports" : "/bench?from=" + number + "#reports";
  }
}

package club.emberwell.grid.next;

import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.OthersWindow;
import club.emberwell.grid.next.Proposal.Basis;
import club.emberwell.grid.next.Proposal.Known;
import club.emberwell.grid.plan.GridPlan;
import club.emberwell.grid.reading.Axis;
import club.emberwell.grid.reading.GridLimits;
import club.emberwell.grid.reading.WrittenAxes;
import club.emberwell.grid.reading.WrittenAxis;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.grid.result.GridResults;
import club.emberwell.grid.result.Results;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.member.Actor;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.stats.EdgePosterior;
import club.emberwell.stats.EdgePrior;
import club.emberwell.stats.Interval;
import club.emberwell.stats.NextCells;
import club.emberwell.stats.Quantiles;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/** Proposes the tests that narrow the window of one's own machine most after a grid. */
@ApplicationScoped
public class NextTests {
  /** Tests proposed where nobody says how many (own rule). */
  public static final int USUAL = 8;

  /** How far beyond where an end may be a test is still worth burning, ln dose (own rule). */
  private static final double BEYOND = 0.1;

  private final GridResults results;
  private final ConsensusService consensus;

  NextTests(GridResults results, ConsensusService consensus) {
    this.results = results;
    this.consensus = consensus;
  }

  /** A judged test with its dose. */
  private record Judged(double log, Effect effect) {}

  /**
   * What to burn next.
   *
   * @param tests how many at most; null = {@link #USUAL}
   * @throws EntryUnknown where the actor has no such grid
   * @throws EntryRefused where so many tests are no grid
   */
  public Proposal of(Actor actor, UUID id, Integer tests) {
    int most = tests == null ? USUAL : tests;
    if (most < GridLimits.FEWEST || most > GridLimits.SIDE) {
      throw new EntryRefused(
          RemarkId.OUT_OF_RANGE,
          "/tests",
          "Ask for %d to %d tests.".formatted(GridLimits.FEWEST, GridLimits.SIDE));
    }
    Results found = results.of(actor, id);
    List<Judged> judged = judged(found);
    Optional<OthersWindow> others =
        consensus.others(
            found.plan().work(), found.plan().laser(), actor, found.grid().written().machine());
    boolean known = others.filter(OthersWindow::known).isPresent();
    return others
        .flatMap(OthersWindow::prior)
        .or(() -> guess(judged, found.plan()))
        .map(prior -> proposal(found, judged, prior, known, most))
        .orElseGet(() -> nothing(found));
  }

  private static List<Judged> judged(Results found) {
    Process process = found.plan().process();
    return found.judged().stream()
        .filter(trial -> dose(process, trial) != null)
        .map(trial -> new Judged(Math.log(dose(process, trial)), trial.effect()))
        .toList();
  }

  private static Double dose(Process process, TrialSnapshot trial) {
    Double dose = trial.derived().dose(process.doseKind());
    return dose != null && dose > 0 ? dose : null;
  }

  /** Round what was right, else between what was too little and too much, else round the plan. */
  private static Optional<EdgePrior> guess(List<Judged> judged, GridPlan plan) {
    double[] right = logs(judged, Effect.RIGHT);
    if (right.length > 0) {
      return Optional.of(EdgePrior.weak(Quantiles.median(right)));
    }
    double[] little = logs(judged, Effect.TOO_LITTLE);
    double[] much = logs(judged, Effect.TOO_MUCH);
    if (little.length > 0 && much.length > 0) {
      return Optional.of(EdgePrior.weak((Quantiles.median(little) + Quantiles.median(much)) / 2));
    }
    double[] planned =
        plan.cells().stream()
            .filter(cell -> cell.burned() && cell.dose() != null && cell.dose() > 0)
            .mapToDouble(cell -> Math.log(cell.dose()))
            .toArray();
    return planned.length == 0
        ? Optional.empty()
        : Optional.of(EdgePrior.weak(Quantiles.median(planned)));
  }

  private static double[] logs(List<Judged> judged, Effect effect) {
    return judged.stream().filter(j -> j.effect() == effect).mapToDouble(Judged::log).toArray();
  }

  private static Proposal nothing(Results found) {
    return new Proposal(
        found.grid(),
        found.plan().process(),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        List.of("The dose of these tests is not known, so no next tests can be proposed."));
  }

  private static Proposal proposal(
      Results found, List<Judged> judged, EdgePrior prior, boolean known, int most) {
    EdgePosterior posterior =
        EdgePosterior.of(
            prior,
            new EdgePosterior.Cells(
                judged.stream().mapToDouble(Judged::log).toArray(),
                judged.stream().map(Judged::effect).toArray(Effect[]::new)));
    double low = posterior.lower().interval().low() - BEYOND;
    double high = posterior.upper().interval().high() + BEYOND;
    double middle = (posterior.lower().middle() + posterior.upper().middle()) / 2;
    Optional<Reachable> reachable =
        Reachable.of(found.plan(), new Interval(low, high, 1).exp(), Math.exp(middle));
    List<Double> speeds = reachable.map(Reachable::speeds).orElse(List.of());
    NextCells.Choice choice =
        NextCells.of(
            posterior,
            speeds.stream().mapToDouble(v -> Math.log(reachable.get().dose(v))).toArray(),
            most);
    List<Double> chosen =
        speeds.stream()
            .filter(v -> choice.logs().contains(Math.log(reachable.get().dose(v))))
            .sorted(Comparator.reverseOrder())
            .toList();
    Known window =
        new Known(
            edge(posterior.lower()),
            edge(posterior.upper()),
            known ? Basis.MEMBERS : Basis.GUESS,
            judged.size(),
            choice.spread() / posterior.spread());
    return new Proposal(
        found.grid(),
        found.plan().process(),
        Optional.of(window),
        chosen.stream().map(v -> test(reachable.get(), v, posterior)).toList(),
        chosen.size() < GridLimits.FEWEST
            ? Optional.empty()
            : Optional.of(grid(found, reachable.get(), chosen)),
        said(judged, posterior, known, chosen.size() >= GridLimits.FEWEST));
  }

  private static Proposal.Edge edge(EdgePosterior.Edge found) {
    return new Proposal.Edge(Math.exp(found.middle()), found.interval().exp());
  }

  private static Proposal.Test test(Reachable from, double speed, EdgePosterior posterior) {
    double dose = from.dose(speed);
    return new Proposal.Test(from.settings(speed), dose, posterior.right(Math.log(dose)));
  }

  /** One row of speeds; of the grid's axes the other stays, with the one value that is kept. */
  private static WrittenGrid grid(Results found, Reachable from, List<Double> speeds) {
    GridPlan.Cell kept = from.from();
    WrittenGrid before = found.grid().written();
    Axis across = found.plan().axes().across();
    Setting other =
        across.setting() == Setting.SPEED ? found.plan().axes().down().setting() : across.setting();
    WrittenSettings settings = before.cell(kept.row(), kept.column());
    WrittenAxis row =
        WrittenAxis.of(
            Setting.SPEED,
            speeds.stream()
                .map(
                    v ->
                        (WrittenQuantity)
                            WrittenSettings.written(new Amount(QuantityKind.SPEED, v)))
                .toList());
    Object value = settings.of(other);
    WrittenAxis stays =
        WrittenAxis.of(
            other,
            List.of(
                value instanceof WrittenQuantity quantity
                    ? quantity
                    : WrittenQuantity.of(String.valueOf(value))));
    return new WrittenGrid(
        null,
        before.machine(),
        before.laser(),
        before.work(),
        settings.with(Setting.SPEED, null).with(other, null),
        new WrittenAxes(row, stays, null, null),
        before.blank(),
        before.timing());
  }

  private static List<String> said(
      List<Judged> judged, EdgePosterior posterior, boolean known, boolean tests) {
    List<String> said = new ArrayList<>();
    long right = judged.stream().filter(j -> j.effect() == Effect.RIGHT).count();
    if (judged.isEmpty()) {
      said.add("No test of this grid is judged yet. This is what the next tests could be.");
    } else if (right == judged.size()) {
      said.add("All tests were right so far. The next ones look for where that ends.");
    } else if (Stream.of(Effect.TOO_LITTLE, Effect.TOO_MUCH)
        .anyMatch(effect -> judged.stream().allMatch(j -> j.effect() == effect))) {
      boolean little = judged.get(0).effect() == Effect.TOO_LITTLE;
      said.add(
          little
              ? "All tests were too little so far. The next ones go higher."
              : "All tests were too much so far. The next ones go lower.");
    }
    if (posterior.contradicted() > 0) {
      said.add(
          "Some results do not fit each other: less was too much where more was too little. Check"
              + " focus and material. We count them with doubt.");
    }
    if (judged.size() == 1) {
      said.add("One test alone says little.");
    }
    if (!known) {
      said.add("Other members' window is not known, so this begins with a wide guess.");
    }
    if (!tests) {
      said.add("Your machine cannot do the tests that would tell more with these settings.");
    }
    return said;
  }
}

package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.Effect;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What the proposed cells save against a plain grid (equal ratios over the band, all at once) and
 * against bisection of both edges (one cell for each edge a blank), and whether the window found
 * holds the truth: made machines whose edges lie round those of a club with edges at 1 and 2.5.
 * Seeds are fixed. The table stands in DEVELOPERS.md.
 */
class NextCellsTest {
  private static final double LOW = 0;
  private static final double HIGH = Math.log(2.5);

  /**
   * @param differ sd of machines, ln dose
   * @param known standard error of the club's edges; 0 where it knows no window
   * @param noise of a cell
   * @param slips share of judgements that are anything
   */
  private record World(double differ, double known, double noise, double slips) {}

  /** One machine: its edges, what is known before, and its answers. */
  private static final class Bench {
    private final SplittableRandom random;
    private final World world;
    private final double lower;
    private final double upper;
    private final EdgePrior prior;
    private final List<Double> logs = new ArrayList<>();
    private final List<Effect> effects = new ArrayList<>();

    Bench(long seed, World world) {
      random = new SplittableRandom(seed);
      this.world = world;
      double off = world.differ() * random.nextGaussian();
      lower = LOW + off + EdgePrior.ALONE * random.nextGaussian();
      upper = HIGH + off + EdgePrior.ALONE * random.nextGaussian();
      double error = world.known();
      double alone = Math.hypot(error, EdgePrior.ALONE);
      double a = LOW + error * random.nextGaussian();
      double b = HIGH + error * random.nextGaussian();
      prior =
          error == 0
              ? EdgePrior.weak((LOW + HIGH) / 2 + world.differ() * random.nextGaussian())
              : new EdgePrior(a, b, alone, alone, world.differ());
    }

    Effect burn(double log) {
      double at = log + world.noise() * random.nextGaussian();
      Effect effect =
          random.nextDouble() < world.slips()
              ? Effect.values()[random.nextInt(3)]
              : at < lower ? Effect.TOO_LITTLE : at > upper ? Effect.TOO_MUCH : Effect.RIGHT;
      logs.add(log);
      effects.add(effect);
      return effect;
    }

    EdgePosterior posterior() {
      return EdgePosterior.of(
          prior,
          new EdgePosterior.Cells(
              logs.stream().mapToDouble(Double::doubleValue).toArray(),
              effects.toArray(Effect[]::new)));
    }

    /** From below where the lower edge may be to above where the upper may be. */
    double[] band(int cells) {
      double reach = 1.64;
      double from = prior.lower() - reach * prior.lowerDeviation();
      double to = prior.upper() + reach * prior.upperDeviation();
      double[] band = new double[cells];
      Arrays.setAll(band, i -> from + (to - from) * (i + 0.5) / cells);
      return band;
    }
  }

  /** How a bench spends its next cells, so many at once. */
  private interface Method {
    void spend(Bench bench, int cells);
  }

  private static final Method PROPOSED =
      (bench, cells) ->
          NextCells.of(bench.posterior(), bench.band(30), cells).logs().forEach(bench::burn);

  private static final Method PLAIN =
      (bench, cells) -> Arrays.stream(bench.band(cells)).forEach(bench::burn);

  /** Halves where each edge may be, one cell for each a blank. */
  private static final class Bisection implements Method {
    private double[] lower;
    private double[] upper;

    @Override
    public void spend(Bench bench, int cells) {
      if (lower == null) {
        double[] band = bench.band(3);
        double half = (band[1] - band[0]) / 2;
        lower = new double[] {band[0] - half, band[1]};
        upper = new double[] {band[2] + half, band[1]};
      }
      for (int i = 0; i < cells / 2; i++) {
        halve(bench, lower, Effect.TOO_LITTLE);
        halve(bench, upper, Effect.TOO_MUCH);
      }
    }

    private static void halve(Bench bench, double[] between, Effect outside) {
      double middle = (between[0] + between[1]) / 2;
      between[bench.burn(middle) == outside ? 0 : 1] = middle;
    }
  }

  /** Over many machines. */
  private static final class Found {
    private int edges;
    private int covered;
    private double squares;
    private double bisected;

    void add(Bench bench, Method method) {
      EdgePosterior posterior = bench.posterior();
      add(posterior.lower(), bench.lower);
      add(posterior.upper(), bench.upper);
      if (method instanceof Bisection halved) {
        bisected += Math.pow((halved.lower[0] + halved.lower[1]) / 2 - bench.lower, 2);
        bisected += Math.pow((halved.upper[0] + halved.upper[1]) / 2 - bench.upper, 2);
      }
    }

    private void add(EdgePosterior.Edge edge, double truth) {
      edges++;
      covered += edge.interval().contains(truth) ? 1 : 0;
      squares += Math.pow(edge.middle() - truth, 2);
    }

    double coverage() {
      return (double) covered / edges;
    }

    double error() {
      return Math.sqrt(squares / edges);
    }

    @Override
    public String toString() {
      return bisected > 0
          ? "%.3f (by itself %.3f), %.3f"
              .formatted(error(), Math.sqrt(bisected / edges), coverage())
          : "%.3f, %.3f".formatted(error(), coverage());
    }
  }

  /** After each blank of so many cells. */
  private static List<Found> blanks(
      World world, Supplier<Method> methods, int cells, int blanks, int machines) {
    List<Found> found = Stream.generate(Found::new).limit(blanks).toList();
    for (int machine = 0; machine < machines; machine++) {
      Bench bench = new Bench(20261126L + 7919L * machine, world);
      Method method = methods.get();
      for (Found after : found) {
        method.spend(bench, cells);
        after.add(bench, method);
      }
    }
    return found;
  }

  private static final World USUAL = new World(0.25, 0.08, 0.1, 0.02);

  /** 80 machines, so 160 edges: the standard error of a share is 0.017 at 0.95. */
  @Test
  void twoBlanksOfEightTellAsMuchAsOnePlainGridOfTwentyFour() {
    Found proposed = blanks(USUAL, () -> PROPOSED, 8, 2, 80).get(1);
    Found plain = blanks(USUAL, () -> PLAIN, 24, 1, 80).get(0);
    String what = proposed + " against " + plain;
    assertTrue(proposed.error() <= 1.05 * plain.error(), what);
    assertTrue(proposed.coverage() >= 0.93 && plain.coverage() >= 0.93, what);
  }

  @Test
  void whatIsExpectedOfTheNextCellsComesTrue() {
    double expected = 0;
    Found found = new Found();
    for (int machine = 0; machine < 80; machine++) {
      Bench bench = new Bench(31L + 7919L * machine, USUAL);
      NextCells.Choice next = NextCells.of(bench.posterior(), bench.band(30), 8);
      expected += next.spread() / 80;
      next.logs().forEach(bench::burn);
      found.add(bench, PROPOSED);
    }
    assertEquals(expected, found.error(), 0.2 * expected);
  }

  private static EdgePosterior after(Effect effect, double... doses) {
    Effect[] effects = new Effect[doses.length];
    Arrays.fill(effects, effect);
    double[] logs = Arrays.stream(doses).map(Math::log).toArray();
    return EdgePosterior.of(EdgePrior.weak(0), new EdgePosterior.Cells(logs, effects));
  }

  @Test
  void withoutAnyCellThePosteriorIsThePrior() {
    EdgePosterior none = after(Effect.RIGHT);
    assertEquals(EdgePrior.weak(0).lower(), none.lower().middle(), 0.05);
    assertEquals(EdgePrior.weak(0).lowerDeviation(), none.lower().deviation(), 0.1);
  }

  @Test
  void wereAllRightTheEndsLieBeyondThem() {
    EdgePosterior right = after(Effect.RIGHT, 0.7, 0.8, 1, 1.2, 1.4);
    assertTrue(right.lower().middle() < Math.log(0.75), right.lower().toString());
    assertTrue(right.upper().middle() > Math.log(1.3), right.upper().toString());
    NextCells.Choice next = NextCells.of(right, new double[] {Math.log(0.4), 0, Math.log(2.5)}, 2);
    assertEquals(List.of(Math.log(0.4), Math.log(2.5)), next.logs().stream().sorted().toList());
  }

  @Test
  void wereAllTooLittleTheNextCellsGoHigher() {
    EdgePosterior little = after(Effect.TOO_LITTLE, 0.5, 1, 2);
    assertTrue(little.lower().middle() > Math.log(1.8), little.lower().toString());
    double[] candidates = {Math.log(0.3), Math.log(0.7), Math.log(1.5), Math.log(3), Math.log(5)};
    NextCells.of(little, candidates, 2)
        .logs()
        .forEach(log -> assertTrue(log > Math.log(2), "tries " + Math.exp(log)));
  }

  @Test
  void resultsThatContradictEachOtherAreCountedAndLeaveTheEndsUnsure() {
    double[] logs = {Math.log(0.5), Math.log(2)};
    EdgePosterior odd =
        EdgePosterior.of(
            EdgePrior.weak(0),
            new EdgePosterior.Cells(logs, new Effect[] {Effect.TOO_MUCH, Effect.TOO_LITTLE}));
    assertEquals(1, odd.contradicted());
    assertTrue(odd.lower().interval().width() > 1, odd.lower().toString());
  }

  @Test
  void oneCellOrNoCandidatesAreNoError() {
    EdgePosterior one = after(Effect.RIGHT, 1);
    NextCells.Choice none = NextCells.of(one, new double[0], 8);
    assertEquals(List.of(), none.logs());
    assertEquals(one.spread(), none.spread());
    assertEquals(1, NextCells.of(one, new double[] {0.5}, 8).logs().size());
  }

  @Test
  @Tag("benchmark")
  void tableOfCells() {
    World[] worlds = {
      USUAL,
      new World(0.25, 0.08, 0.1, 0),
      new World(0.25, 0.08, 0.05, 0.02),
      new World(0.25, 0.08, 0.2, 0.02),
      new World(0.4, 0.15, 0.1, 0.02),
      new World(0.25, 0, 0.1, 0.02),
    };
    int machines = Integer.getInteger("machines", 400);
    for (World world : worlds) {
      System.out.println(world);
      List<Found> four = blanks(world, () -> PROPOSED, 4, 8, machines);
      List<Found> eight = blanks(world, () -> PROPOSED, 8, 4, machines);
      List<Found> halved = blanks(world, Bisection::new, 8, 4, machines);
      for (int blank = 0; blank < 4; blank++) {
        Found plain = blanks(world, () -> PLAIN, 8 * (blank + 1), 1, machines).get(0);
        System.out.printf(
            "%d | %s | %s | %s | %s%n",
            8 * (blank + 1), four.get(2 * blank + 1), eight.get(blank), plain, halved.get(blank));
      }
    }
  }
}

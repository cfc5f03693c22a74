package club.emberwell.consensus.factor;

import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.DoseKind;
import club.emberwell.report.InventedTrials;
import club.emberwell.stats.Quantiles;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * How far a start is off where the machine never did the work, on the invented club: one work of a
 * machine is left out at a time, the start found from everything else, and compared with the median
 * of what came out right on it.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class StartOnUnseenWorkTest {
  private static final int VOICES = 3;

  /** Variances of the crude form that statistics.md measured. */
  private static final double TAU2 = 0.03;

  private static final double S2 = 0.08;

  private final List<Left> left = new ArrayList<>();

  /**
   * One work of one machine, left out.
   *
   * @param off ln dose of its own median over the middle of the other members
   * @param rest works of its kind of light without it
   */
  private record Left(long machine, Group group, double off, List<Group> rest, Group others) {}

  @BeforeAll
  void leaveOut() throws IOException {
    List<Group> all = InventedTrials.read().groups();
    for (Group group : all) {
      List<Group> light = all.stream().filter(g -> g.key().sameLight(group.key())).toList();
      long[] machines =
          Arrays.stream(group.rows())
              .filter(group::right)
              .mapToLong(group::machine)
              .distinct()
              .toArray();
      for (long machine : machines) {
        leaveOut(machine, group, light);
      }
    }
  }

  private void leaveOut(long machine, Group group, List<Group> light) {
    long member =
        group.member(
            Arrays.stream(group.rows())
                .filter(row -> group.machine(row) == machine)
                .findFirst()
                .orElseThrow());
    Group others = only(group, row -> group.member(row) != member);
    Map<Long, List<Double>> voices = voices(others);
    double[] own =
        Arrays.stream(group.rows())
            .filter(
                row -> group.right(row) && group.machine(row) == machine && dose(group, row) > 0)
            .mapToDouble(row -> Math.log(dose(group, row)))
            .toArray();
    if (own.length > 0 && voices.size() >= VOICES) {
      List<Group> rest =
          light.stream()
              .map(g -> g == group ? only(g, row -> g.machine(row) != machine) : g)
              .toList();
      left.add(new Left(machine, group, Quantiles.median(own) - middle(voices), rest, others));
    }
  }

  private static double dose(Group group, int row) {
    return group.columns().values(Range.doseMeasure(group.key()))[row];
  }

  private static Group only(Group group, Predicate<Integer> kept) {
    return new Group(
        group.key(), group.columns(), Arrays.stream(group.rows()).filter(kept::test).toArray());
  }

  private static Map<Long, List<Double>> voices(Group group) {
    Map<Long, List<Double>> voices = new TreeMap<>();
    for (int row : group.rows()) {
      if (group.right(row) && dose(group, row) > 0) {
        voices
            .computeIfAbsent(group.member(row), key -> new ArrayList<>())
            .add(Math.log(dose(group, row)));
      }
    }
    return voices;
  }

  private static double middle(Map<Long, List<Double>> voices) {
    return Quantiles.median(voices.values().stream().mapToDouble(Quantiles::median).toArray());
  }

  /** Own works' mean distance from the others, drawn to nought by fixed variances. */
  private double crude(Left one, Map<Long, List<Left>> byMachine) {
    double[] offs =
        byMachine.get(one.machine()).stream()
            .filter(other -> other != one && other.group().key().sameLight(one.group().key()))
            .mapToDouble(Left::off)
            .toArray();
    return offs.length < VOICES
        ? 0
        : Arrays.stream(offs).average().orElseThrow() * TAU2 / (TAU2 + S2 / offs.length);
  }

  private static Optional<Double> ours(Left one, Predicate<DoseKind> kinds) {
    List<Group> works = one.rest().stream().filter(g -> kinds.test(kind(g))).toList();
    return MachineFactors.of(works).onThisWork(one.machine(), one.others()).map(OnThisWork::times);
  }

  /** Median and root mean square of what is left. */
  private record Error(double median, double rms) {
    static Error of(double[] errors) {
      double squares = Arrays.stream(errors).map(e -> e * e).average().orElseThrow();
      return new Error(
          Quantiles.median(Arrays.stream(errors).map(Math::abs).toArray()), Math.sqrt(squares));
    }

    @Override
    public String toString() {
      return "%.3f, %.3f".formatted(median, rms);
    }
  }

  @Test
  void theFactorBringsTheStartNearerThanTheCrudeFormAndThanNone() {
    Map<Long, List<Left>> byMachine =
        left.stream()
            .collect(Collectors.groupingBy(Left::machine, TreeMap::new, Collectors.toList()));
    Error none = Error.of(left.stream().mapToDouble(Left::off).toArray());
    Error crude =
        Error.of(left.stream().mapToDouble(one -> one.off() - crude(one, byMachine)).toArray());
    Error ours = errors(one -> kind -> true);
    String what =
        left.size() + " machine-works: none " + none + "; crude " + crude + "; ours " + ours;
    assertTrue(left.size() > 600, what);
    assertTrue(ours.median() < crude.median() && crude.median() < none.median(), what);
    assertTrue(ours.rms() < crude.rms() && crude.rms() < none.rms(), what);
  }

  /** Two factors a machine start no nearer (0.113, 0.224) and say nothing of more machines. */
  @Test
  void oneFactorForAreaAndLineWorkIsAsNearAsOneForEachAndTellsMore() {
    Error together = errors(one -> kind -> true);
    Error apart = errors(one -> kind -> kind == kind(one.group()));
    String what = "together " + together + ", apart " + apart;
    assertTrue(Math.abs(together.rms() - apart.rms()) < 0.005, what);
    assertTrue(told(one -> kind -> true) > told(one -> kind -> kind == kind(one.group())), what);
  }

  private Error errors(Function<Left, Predicate<DoseKind>> kinds) {
    return Error.of(
        left.stream()
            .mapToDouble(one -> one.off() - ours(one, kinds.apply(one)).map(Math::log).orElse(0.0))
            .toArray());
  }

  private long told(Function<Left, Predicate<DoseKind>> kinds) {
    return left.stream().filter(one -> ours(one, kinds.apply(one)).isPresent()).count();
  }

  private static DoseKind kind(Group group) {
    return group.key().process().doseKind();
  }
}

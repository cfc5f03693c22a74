package club.emberwell.consensus.factor;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.stats.CrossedEffects;
import club.emberwell.stats.Interval;
import club.emberwell.stats.Quantiles;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * How the machines of a club stand to each other, from all that was right: ln dose = work + machine
 * + rest ({@link CrossedEffects}). Never across wavelength bands or regimes. Area and line work
 * count together: leaving out a work of the invented club at a time, starts were as near as with a
 * factor for each, and more machines had one.
 */
public final class MachineFactors {
  /** What keeps machines apart; a machine that was changed may stand in several. */
  private record Lit(RangeKey.Light light, Regime regime) {
    static Lit of(RangeKey key) {
      return new Lit(key.light(), key.regime());
    }

    /** Without a wavelength nothing is known to be alike. */
    boolean known() {
      return light.band() != WavelengthBand.OTHER || light.nm() > 0;
    }
  }

  /** The machines of one kind of light. */
  private record Fitted(Map<Long, Integer> columns, CrossedEffects effects) {
    static Fitted of(Values values) {
      return new Fitted(values.columns, values.effects());
    }

    Optional<CrossedEffects.Against> against(long machine) {
      return Optional.ofNullable(columns.get(machine)).flatMap(effects::against);
    }

    double effect(long machine) {
      Integer column = columns.get(machine);
      return column == null ? 0 : effects.effect(column);
    }
  }

  /** Right trials on the way into arrays; a work is a row, a machine a column. */
  private static final class Values {
    private final Map<Long, Integer> columns = new HashMap<>();
    private final List<Integer> owners = new ArrayList<>();
    private int[] rows = new int[64];
    private int[] machines = new int[64];
    private double[] logs = new double[64];
    private int n;
    private int works;

    void add(Group group) {
      double[] doses = group.columns().values(Range.doseMeasure(group.key()));
      int before = n;
      for (int row : group.rows()) {
        if (group.right(row) && doses[row] > 0) {
          add(group.machine(row), (int) group.member(row), Math.log(doses[row]));
        }
      }
      works += n > before ? 1 : 0;
    }

    private void add(long machine, int member, double log) {
      if (n == logs.length) {
        rows = Arrays.copyOf(rows, 2 * n);
        machines = Arrays.copyOf(machines, 2 * n);
        logs = Arrays.copyOf(logs, 2 * n);
      }
      rows[n] = works;
      machines[n] =
          columns.computeIfAbsent(
              machine,
              key -> {
                owners.add(member);
                return owners.size() - 1;
              });
      logs[n++] = log;
    }

    CrossedEffects effects() {
      return CrossedEffects.of(
          new CrossedEffects.Values(
              owners.stream().mapToInt(Integer::intValue).toArray(),
              Arrays.copyOf(rows, n),
              Arrays.copyOf(machines, n),
              Arrays.copyOf(logs, n)));
    }
  }

  private final Map<Lit, Values> values = new HashMap<>();

  /** Found when the first machine of such light is asked about. */
  private final Map<Lit, Fitted> fitted = new ConcurrentHashMap<>();

  private MachineFactors() {}

  /**
   * @param works all trials of the club by work
   */
  public static MachineFactors of(List<Group> works) {
    MachineFactors found = new MachineFactors();
    for (Group group : works) {
      Lit lit = Lit.of(group.key());
      if (lit.known()) {
        found.values.computeIfAbsent(lit, key -> new Values()).add(group);
      }
    }
    return found;
  }

  /**
   * The factor of a machine by the light it has now. Empty where it shares fewer than 3 works with
   * machines of others, or the factor is not known to within tenfold.
   *
   * @param machine number
   */
  public Optional<MachineFactor> of(long machine, Laser laser) {
    return of(machine, new Lit(RangeKey.Light.of(laser), laser.regime()));
  }

  private Optional<Fitted> fitted(Lit lit) {
    return Optional.ofNullable(values.get(lit))
        .map(found -> fitted.computeIfAbsent(lit, key -> Fitted.of(found)));
  }

  private Optional<MachineFactor> of(long machine, Lit lit) {
    return fitted(lit)
        .flatMap(found -> found.against(machine))
        .map(MachineFactors::factor)
        .filter(MachineFactor::told);
  }

  private static MachineFactor factor(CrossedEffects.Against found) {
    Interval interval = found.interval().exp();
    return new MachineFactor(Math.exp(found.effect()), interval, found.rows());
  }

  /**
   * What the factor makes of a work: the median of voices once more, each trial divided by the
   * factor of its own machine and multiplied by this one's. Empty where the machine has no factor,
   * another light, or did this work right itself: then its own results speak.
   *
   * @param machine number
   */
  public Optional<OnThisWork> onThisWork(long machine, Laser laser, Group group) {
    return group.key().litBy(laser) ? onThisWork(machine, group) : Optional.empty();
  }

  Optional<OnThisWork> onThisWork(long machine, Group group) {
    Lit lit = Lit.of(group.key());
    if (didRight(machine, group)) {
      return Optional.empty();
    }
    return of(machine, lit)
        .map(
            factor ->
                new OnThisWork(factor, times(machine, factor, fitted(lit).orElseThrow(), group)));
  }

  private static boolean didRight(long machine, Group group) {
    return Arrays.stream(group.rows())
        .anyMatch(row -> group.machine(row) == machine && group.right(row));
  }

  private static double times(long machine, MachineFactor factor, Fitted found, Group group) {
    double[] doses = group.columns().values(Range.doseMeasure(group.key()));
    Map<Long, List<Double>> plain = new TreeMap<>();
    Map<Long, List<Double>> carried = new TreeMap<>();
    double own = found.effect(machine);
    for (int row : group.rows()) {
      if (group.right(row) && doses[row] > 0) {
        long member = group.member(row);
        double log = Math.log(doses[row]);
        plain.computeIfAbsent(member, key -> new ArrayList<>()).add(log);
        carried
            .computeIfAbsent(member, key -> new ArrayList<>())
            .add(log - found.effect(group.machine(row)) + own);
      }
    }
    return plain.isEmpty() ? factor.factor() : Math.exp(middle(carried) - middle(plain));
  }

  private static double middle(Map<Long, List<Double>> voices) {
    return Quantiles.median(voices.values().stream().mapToDouble(Quantiles::median).toArray());
  }
}

package club.emberwell.consensus;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Columns for a test, trial by trial. A trial is right unless it is said otherwise. */
public final class MadeTrials {
  private final List<Trial> trials = new ArrayList<>();
  private final Map<Property, List<String>> names = new HashMap<>();

  /** One trial on the way. */
  public final class Trial {
    private final long member;
    private long report = trials.size() + 1L;
    private long machine;
    private Process process = Process.SURFACE_ENGRAVING;
    private WavelengthBand band = WavelengthBand.CO2_10600;
    private Regime regime = Regime.CW;
    private Effect effect = Effect.RIGHT;
    private final double[] values = new double[Measure.all().size()];
    private final int[] codes = new int[Property.all().size()];

    private Trial(long member) {
      this.member = member;
      Arrays.fill(values, Double.NaN);
      Arrays.fill(codes, -1);
    }

    public Trial on(long number) {
      machine = number;
      return this;
    }

    public Trial of(Process other) {
      process = other;
      return this;
    }

    public Trial at(WavelengthBand other) {
      band = other;
      return this;
    }

    /** One of several trials of a report. */
    public Trial in(long grid) {
      report = grid;
      return this;
    }

    public Trial in(Regime other) {
      regime = other;
      return this;
    }

    public Trial was(Effect other) {
      effect = other;
      return this;
    }

    public Trial dose(double dose) {
      return with(
          process.doseKind() == DoseKind.AREAL ? Measure.AREAL_DOSE : Measure.LINE_DOSE, dose);
    }

    public Trial with(Measure measure, double value) {
      values[measure.place()] = value;
      return this;
    }

    /** With words that no moderator has filed. */
    public Trial unfiled(Property property, String words) {
      codes[property.place()] = TrialColumns.NOT_FILED;
      return with(Property.UNFILED, words);
    }

    public Trial with(Property property, String value) {
      List<String> known = names.computeIfAbsent(property, key -> new ArrayList<>());
      if (!known.contains(value)) {
        known.add(value);
      }
      codes[property.place()] = known.indexOf(value);
      return this;
    }
  }

  public Trial by(long member) {
    Trial trial = new Trial(member);
    trials.add(trial);
    return trial;
  }

  public int size() {
    return trials.size();
  }

  public TrialColumns columns() {
    int n = trials.size();
    double[][] values = new double[Measure.all().size()][n];
    int[][] properties = new int[Property.all().size()][n];
    for (int i = 0; i < n; i++) {
      for (int m = 0; m < values.length; m++) {
        values[m][i] = trials.get(i).values[m];
      }
      for (int p = 0; p < properties.length; p++) {
        properties[p][i] = trials.get(i).codes[p];
      }
    }
    byte[] process = new byte[n];
    byte[] band = new byte[n];
    byte[] regime = new byte[n];
    byte[] effect = new byte[n];
    for (int i = 0; i < n; i++) {
      process[i] = (byte) trials.get(i).process.ordinal();
      band[i] = (byte) trials.get(i).band.ordinal();
      regime[i] = (byte) trials.get(i).regime.ordinal();
      effect[i] = (byte) trials.get(i).effect.ordinal();
    }
    return new TrialColumns(
        n,
        new TrialColumns.Who(
            trials.stream().mapToLong(t -> t.member).toArray(),
            trials.stream().mapToLong(t -> t.machine).toArray(),
            trials.stream().mapToLong(t -> t.report).toArray(),
            new int[n]),
        new TrialColumns.Apart(process, band, regime),
        effect,
        values,
        properties,
        (property, code) -> names.get(property).get(code));
  }

  /** By key, most voices first. */
  public List<Group> groups() {
    return Group.split(columns());
  }

  /** All of them, where they have one key. */
  public Group group() {
    List<Group> groups = groups();
    if (groups.size() != 1) {
      throw new AssertionError(groups.size() + " groups");
    }
    return groups.get(0);
  }

  public Range range() {
    return Range.of(group(), false);
  }

  /** Doses of right trials, a member each. */
  public static MadeTrials ofVoices(double... doses) {
    MadeTrials made = new MadeTrials();
    for (int i = 0; i < doses.length; i++) {
      made.by(i + 1L).dose(doses[i]);
    }
    return made;
  }
}

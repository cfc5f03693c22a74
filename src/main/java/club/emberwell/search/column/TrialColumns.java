package club.emberwell.search.column;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;

/**
 * The numbers of every matching trial, one array element each, in no particular order. NaN = not
 * given. Entities are small integers (their {@code number} column) so that grouping costs nothing.
 *
 * @param size how many trials
 * @param effect ordinal of {@link club.emberwell.laser.Effect}
 * @param values by {@link Measure}, canonical units
 * @param properties by {@link Property}: small integer codes, {@link #NOT_GIVEN} and {@link
 *     #NOT_FILED} below zero
 */
public record TrialColumns(
    int size,
    Who who,
    Apart apart,
    byte[] effect,
    double[][] values,
    int[][] properties,
    PropertyLabels labels) {
  /** The code of a property about which a trial says nothing. */
  public static final int NOT_GIVEN = -1;

  /** The code where words were written that no moderator has filed yet. */
  public static final int NOT_FILED = -2;

  /**
   * Whose each trial is.
   *
   * @param member number of the member whose voice it is
   * @param machine number of the machine, 0 = described in the report only
   * @param report number of the report
   * @param trial its place among the report's trials, 0 = first
   */
  public record Who(long[] member, long[] machine, long[] report, int[] trial) {}

  /**
   * What keeps trials apart.
   *
   * @param process ordinal of {@link club.emberwell.laser.Process}
   * @param band ordinal of {@link club.emberwell.laser.WavelengthBand}
   * @param regime ordinal of {@link club.emberwell.laser.Regime}
   */
  public record Apart(byte[] process, byte[] band, byte[] regime) {}

  /** A value and what people call it. */
  public record Named(String value, String label) {}

  /** Names for the codes in {@link #properties}. */
  public interface PropertyLabels {
    String label(Property property, int code);

    /** The stored value: the slug of a term, otherwise the label. */
    default String value(Property property, int code) {
      return label(property, code);
    }

    /** What the value counts as where those that respond alike count as one. */
    default Named alike(Property property, int code) {
      return new Named(value(property, code), label(property, code));
    }

    /** The same where other words count as one. */
    default PropertyLabels counting(Vocabulary other) {
      return this;
    }
  }

  /** The same trials where other words count as one: as a merge would leave them. */
  public TrialColumns counting(Vocabulary other) {
    return new TrialColumns(size, who, apart, effect, values, properties, labels.counting(other));
  }

  public long[] member() {
    return who.member();
  }

  public long[] machine() {
    return who.machine();
  }

  public long[] report() {
    return who.report();
  }

  public byte[] process() {
    return apart.process();
  }

  public byte[] band() {
    return apart.band();
  }

  public byte[] regime() {
    return apart.regime();
  }

  public double[] values(Measure measure) {
    return values[measure.place()];
  }

  public int[] property(Property property) {
    return properties[property.place()];
  }
}

package club.emberwell.lot.drift;

import club.emberwell.stats.Interval;
import club.emberwell.stats.LotDrift;
import org.jspecify.annotations.Nullable;

/**
 * What dose a lot needs beside earlier ones of the same supplier, material, coating and colour.
 *
 * @param burned whether a report with a right trial names it
 * @param earlier lots that came before it and were burned
 * @param change against those; null where they are too few to say
 * @param noticed the last change the check over all of them found up to it, or null
 * @param others what lots of other members that came since say beside those before, or null
 */
public record Drift(
    boolean burned,
    int earlier,
    @Nullable Change change,
    @Nullable Noticed noticed,
    @Nullable Others others) {

  /**
   * How many times the dose.
   *
   * @param lots it was compared with
   * @param ratio 1 = the same
   * @param low of the 95 % interval
   * @param high of the same
   */
  public record Change(int lots, double ratio, double low, double high) {
    static Change of(LotDrift.Change change) {
      Interval interval = change.interval();
      return new Change(change.lots(), change.ratio(), interval.low(), interval.high());
    }

    /** Whether the interval leaves out that nothing changed. */
    public boolean isClear() {
      return low > 1 || high < 1;
    }
  }

  /**
   * A change that was flagged.
   *
   * @param since when the first lot came that needs another dose, ISO 8601
   * @param at when the lot came with which it was noticed
   * @param ratio of the doses since and before
   */
  public record Noticed(String since, String at, double ratio) {}

  /** The same change in lots of other members who share theirs; never who. */
  public record Others(int members, Change change) {}

  Drift with(Others told) {
    return new Drift(burned, earlier, change, noticed, told);
  }
}

package club.emberwell.recipe;

import club.emberwell.entry.Entry;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import java.time.Instant;
import java.util.UUID;

/**
 * A recipe as it stands, detached.
 *
 * @param style by which the written numbers were read
 * @param read what the words mean, by what the club's words mean now
 * @param usedAt when its owner last said that they used it, null = never
 */
public record Recipe(
    Entry entry, WrittenRecipe written, NumberStyle style, Interpretation read, Instant usedAt) {
  public UUID id() {
    return entry.id();
  }

  public int version() {
    return entry.version();
  }

  public String name() {
    return entry.title();
  }

  /** Null where it lies in none. */
  public String folder() {
    return written.folder();
  }

  /** The laser as it was when the recipe was written last. */
  public Laser laser() {
    return read.laser();
  }

  public Work work() {
    return read.work();
  }

  /** Its settings with what follows from them; nobody said how they came out. */
  public TrialSnapshot settings() {
    return read.trials().get(0);
  }
}

package club.emberwell.web.bench;

import club.emberwell.access.CurrentActor;
import club.emberwell.exchange.bench.SavedBench;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.time.Instant;

/** Whether the reader's bench changed since its last copy, for the pages that remind of it. */
@Named("benchCopy")
@RequestScoped
public class CopyReminder {
  private final SavedBench saved;
  private final CurrentActor current;
  private SavedBench.Standing standing;

  CopyReminder(SavedBench saved, CurrentActor current) {
    this.saved = saved;
    this.current = current;
  }

  /** True while something on the bench is newer than its last copy. */
  public boolean isDue() {
    return standing().changed();
  }

  /** Null where no copy was ever saved. */
  public Instant getSavedAt() {
    return standing().savedAt();
  }

  private SavedBench.Standing standing() {
    if (standing == null) {
      standing = saved.of(current.get());
    }
    return standing;
  }
}

package club.emberwell.entry.own;

import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryPart;
import club.emberwell.quantity.NumberStyle;
import jakarta.persistence.MappedSuperclass;

/**
 * The row of one.
 *
 * @param <R> what was read of one
 * @param <T> one as it stands, detached
 */
@MappedSuperclass
public abstract class OwnRow<R extends OwnWords, T> extends EntryPart {
  protected OwnRow() {}

  protected OwnRow(EntryEntity entry) {
    super(entry);
  }

  /** Takes what was read. */
  protected abstract void take(R read);

  /** Whether it says the same. */
  protected abstract boolean says(R read);

  /** By which its numbers are read. */
  protected NumberStyle numberStyle() {
    return NumberStyle.ANY;
  }

  /**
   * As it stands, detached.
   *
   * @param handle of its owner
   */
  protected abstract T detached(String handle);
}

package club.emberwell.entry.own;

import club.emberwell.entry.Words;

/** What was read of one, checked. */
public interface OwnWords {
  /** What its entry keeps of it. */
  Words words();
}

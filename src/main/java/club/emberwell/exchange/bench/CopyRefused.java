package club.emberwell.exchange.bench;

import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;

/** A file that is none of ours, was changed or is too large: nothing was written. */
public class CopyRefused extends EntryRefused {
  /**
   * @param sentence for a person
   */
  CopyRefused(String sentence) {
    super(RemarkId.COPY_UNUSABLE, "/file", sentence);
  }
}

package club.emberwell.sample;

import club.emberwell.entry.Entry;
import club.emberwell.tag.TagCode;
import java.util.UUID;

/** A kept test piece as it stands, detached. */
public record Sample(Entry entry, TagCode tag, WrittenSample written) {
  public UUID id() {
    return entry.id();
  }

  public int version() {
    return entry.version();
  }

  /** What lists call it. */
  public String title() {
    return entry.title();
  }
}

package club.emberwell.talk;

import club.emberwell.entry.Origin;
import java.time.Instant;
import java.util.UUID;

/**
 * An entry on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one entry
 * @param origin where it was made
 * @param at when it was made, null = now
 */
public record TalkPosting(UUID id, WrittenTalk written, Origin origin, Instant at) {
  /** Made here and now. */
  public static TalkPosting of(UUID id, WrittenTalk written) {
    return new TalkPosting(id, written, Origin.HERE, null);
  }
}

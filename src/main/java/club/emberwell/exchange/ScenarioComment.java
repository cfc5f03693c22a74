package club.emberwell.exchange;

import club.emberwell.entry.Origin;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.WrittenTalk;
import java.time.Instant;
import java.util.UUID;

/**
 * One line of {@code comments.jsonl}.
 *
 * @param report under which it stands
 */
record ScenarioComment(UUID id, String by, Instant at, UUID report, String text) {
  TalkPosting posting(Origin origin) {
    return new TalkPosting(id, WrittenTalk.untitled(text), origin, at);
  }
}

package club.emberwell.exchange;

import club.emberwell.entry.Origin;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.WrittenTalk;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.UUID;

/**
 * One line of {@code talk.jsonl}: an entry in the shape of the API with its kind, who and when.
 *
 * @param kind {@code question}, {@code answer} or {@code notice}
 * @param question of an answer: the id of what it answers
 * @param accepted of an answer: whether it is the one that helped
 * @param picture what is drawn with it, or null
 */
record ScenarioTalkLine(
    UUID id,
    String kind,
    String by,
    Instant at,
    UUID question,
    @JsonUnwrapped WrittenTalk said,
    boolean accepted,
    ScenarioPicture picture) {
  TalkPosting posting(Origin origin) {
    return new TalkPosting(id, said, origin, at);
  }
}

package club.emberwell.talk;

import java.time.Instant;
import java.util.UUID;

/**
 * One version of an entry.
 *
 * @param reason null where none was given
 */
public record TalkRevision(
    int version,
    TalkAction action,
    UUID editorId,
    String editorHandle,
    Instant at,
    String reason,
    TalkState state,
    WrittenTalk written) {}

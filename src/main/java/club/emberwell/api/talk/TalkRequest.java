package club.emberwell.api.talk;

import club.emberwell.talk.Ties;
import club.emberwell.talk.WrittenTalk;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A question, an answer, a notice or a comment as sent.
 *
 * @param id made by the client, or left out
 * @param title of a question or a notice
 * @param text Markdown; of a comment plain text
 * @param reason of an edit, for readers of the history
 */
@Schema(
    name = "TalkRequest",
    requiredProperties = {"text"})
record TalkRequest(UUID id, String title, String text, Ties ties, String reason) {
  WrittenTalk written() {
    return new WrittenTalk(title, text, ties);
  }
}

package club.emberwell.api.talk;

import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A comment as sent.
 *
 * @param id made by the client, or left out
 * @param text plain text
 * @param reason of an edit, for readers of the history
 */
@Schema(
    name = "CommentRequest",
    requiredProperties = {"text"})
record CommentRequest(UUID id, String text, String reason) {
  TalkRequest talk() {
    return new TalkRequest(id, null, text, null, reason);
  }
}

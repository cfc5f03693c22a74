package club.emberwell.desk.word;

import club.emberwell.catalog.CautionRule;
import java.time.Instant;
import java.util.UUID;

/**
 * A caution as somebody wants it to read.
 *
 * @param base version of the caution it is based on; 0 for a new one
 * @param state waiting, accepted, declined or withdrawn
 * @param outcome what was said about it, null while it waits
 */
public record CautionProposal(
    UUID id,
    int base,
    CautionRule rule,
    String why,
    UUID member,
    String by,
    Instant createdAt,
    String state,
    String outcome) {
  public boolean waiting() {
    return "waiting".equals(state);
  }
}

package club.emberwell.desk.word;

import club.emberwell.catalog.CautionRule;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A caution as somebody wants it to read.
 *
 * @param base version of the caution it is based on; 0 for a new one
 */
public record CautionProposal(
    UUID id,
    int base,
    CautionRule rule,
    String why,
    @JsonUnwrapped Author author,
    Instant createdAt,
    @JsonUnwrapped Standing standing) {
  /** Who proposes it. */
  public record Author(UUID member, String by) {}

  /**
   * What came of it.
   *
   * @param state waiting, accepted, declined or withdrawn
   * @param outcome what was said about it, null while it waits
   */
  public record Standing(String state, @Nullable String outcome) {}

  public UUID member() {
    return author.member();
  }

  public String by() {
    return author.by();
  }

  public String state() {
    return standing.state();
  }

  public String outcome() {
    return standing.outcome();
  }

  public boolean waiting() {
    return "waiting".equals(state());
  }
}

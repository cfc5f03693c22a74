package club.emberwell.api.view;

import club.emberwell.member.Members;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A member, wherever one stands in an answer.
 *
 * @param id left out of whoever erased their account
 * @param handle {@code former member} of those
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MemberJson(@Nullable UUID id, String handle) {
  /** Somebody by name, or nobody: what the server itself did has no member. */
  public static MemberJson of(UUID id, String handle) {
    return handle == null
        ? null
        : new MemberJson(Members.FORMER.equals(handle) ? null : id, handle);
  }
}

package club.emberwell.web.frame;

import club.emberwell.member.Outcome;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import jakarta.ws.rs.core.Response;
import java.util.List;

/** How a failed account action stands on a page. */
public final class Outcomes {
  private static final int UNPROCESSABLE = 422;
  private static final int TOO_MANY = 429;

  private Outcomes() {}

  /** What to say, at its field or above the form. */
  public static List<Remark> remarks(Outcome<?> outcome) {
    if (outcome instanceof Outcome.Refused<?> refused) {
      return refused.remarks();
    } else if (outcome instanceof Outcome.Unproven<?> unproven) {
      return List.of(Remark.error(RemarkId.UNPROVEN, "", unproven.why()));
    } else if (outcome instanceof Outcome.Denied<?> denied) {
      return List.of(Remark.error(RemarkId.DENIED, "", denied.why()));
    } else if (outcome instanceof Outcome.Throttled<?> throttled) {
      long seconds = Math.max(1, throttled.retryAfter().toSeconds());
      return List.of(
          Remark.error(
              RemarkId.THROTTLED, "", "Too many tries. Come back in " + seconds + " seconds."));
    }
    return List.of();
  }

  /** The answer to fill with the form. */
  public static Response.ResponseBuilder status(Outcome<?> outcome) {
    if (outcome instanceof Outcome.Unproven<?>) {
      return Response.status(Response.Status.UNAUTHORIZED);
    } else if (outcome instanceof Outcome.Denied<?>) {
      return Response.status(Response.Status.FORBIDDEN);
    } else if (outcome instanceof Outcome.Throttled<?> throttled) {
      return Response.status(TOO_MANY)
          .header("Retry-After", Math.max(1, throttled.retryAfter().toSeconds()));
    }
    return Response.status(UNPROCESSABLE);
  }
}

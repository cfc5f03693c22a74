package club.emberwell.api.talk;

import club.emberwell.access.Errors;
import club.emberwell.access.Problems;
import club.emberwell.talk.TalkGone;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** What is peculiar to talk, as answers. */
class TalkErrors {
  private final Errors errors;

  TalkErrors(Errors errors) {
    this.errors = errors;
  }

  @ServerExceptionMapper
  Response gone(TalkGone e) {
    return errors.answer(Problems.of(Response.Status.GONE.getStatusCode(), e.getMessage()));
  }
}

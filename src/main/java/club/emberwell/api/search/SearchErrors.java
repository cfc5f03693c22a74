package club.emberwell.api.search;

import club.emberwell.access.Errors;
import club.emberwell.access.Problems;
import club.emberwell.search.index.IndexNotReady;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** What is peculiar to searching, as answers. */
class SearchErrors {
  private static final int SOON_SECONDS = 5;

  private final Errors errors;

  SearchErrors(Errors errors) {
    this.errors = errors;
  }

  @ServerExceptionMapper
  Response notReady(IndexNotReady e) {
    int status = Response.Status.SERVICE_UNAVAILABLE.getStatusCode();
    Response answer = errors.answer(Problems.of(status, e.getMessage()));
    return Response.fromResponse(answer).header(HttpHeaders.RETRY_AFTER, SOON_SECONDS).build();
  }
}

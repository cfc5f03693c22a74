package club.emberwell.api.writes;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.Etags;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.Actor;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/** What every resource takes from a request beside its body, and gives with an answer. */
@RequestScoped
public class ApiRequest {
  private final CurrentActor current;
  private final KeyedWrites writes;
  private final RoutingContext request;

  ApiRequest(CurrentActor current, KeyedWrites writes, RoutingContext request) {
    this.current = current;
    this.writes = writes;
    this.request = request;
  }

  /** Who asks. */
  public Actor actor() {
    return current.get();
  }

  /** The id of the token of this request; null for a stranger. */
  public UUID credential() {
    return current.credential();
  }

  /** The version in If-Match; 428 where it is missing, 412 where it cannot be one of ours. */
  public int version() {
    Declared.insist(request, IfMatch.class);
    return Etags.required(request);
  }

  /** The version in If-Match, null where there is none. */
  public Integer versionIfGiven() {
    Declared.insist(request, IfMatch.class);
    return Etags.given(request);
  }

  /** Does a write once per Idempotency-Key, or answers what it answered before. */
  public Response once(Object sent, Supplier<Response> write) {
    Declared.insist(request, Keyed.class);
    return writes.once(sent, write);
  }

  /** The same where the answer is 200 with what the write gives. */
  public Response did(Object sent, Function<Actor, Object> write) {
    return writes.once(sent, () -> Response.ok(write.apply(actor())).build());
  }

  /** The same with nothing to tell. */
  public Response done(Object sent, Consumer<Actor> write) {
    return writes.once(
        sent,
        () -> {
          write.accept(actor());
          return Response.noContent().build();
        });
  }

  /** An answer that names its version, for the next If-Match. */
  public static Response answer(Response.ResponseBuilder response, long version, Object entity) {
    return response.header(HttpHeaders.ETAG, Etags.of(version)).entity(entity).build();
  }

  /** A field that must be there. */
  public static <T> T needed(String pointer, T given) {
    if (given == null || given instanceof String text && text.isBlank()) {
      throw Problems.at(ProblemKind.INVALID_FIELDS, pointer, "This field is needed.").exception();
    }
    return given;
  }
}

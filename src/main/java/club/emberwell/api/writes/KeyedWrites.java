package club.emberwell.api.writes;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.MemberLimits;
import club.emberwell.member.pace.Idempotency;
import club.emberwell.member.pace.Idempotency.Answer;
import club.emberwell.member.pace.Idempotency.Answered;
import club.emberwell.member.pace.Idempotency.OtherPayload;
import club.emberwell.member.pace.Idempotency.Result;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.function.Supplier;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Runs the writing POSTs of the API once per {@code Idempotency-Key}: 400 without a key, 422 for a
 * key that was used for something else, 409 while the first is running, the first answer again
 * afterwards. A refused write leaves the key free.
 */
@RequestScoped
public class KeyedWrites {
  private static final String HEADER = "Idempotency-Key";

  private final Idempotency idempotency;
  private final ObjectMapper json;
  private final RoutingContext request;
  private final CurrentActor actor;

  KeyedWrites(
      Idempotency idempotency, ObjectMapper json, RoutingContext request, CurrentActor actor) {
    this.idempotency = idempotency;
    this.json = json;
    this.request = request;
    this.actor = actor;
  }

  /**
   * Does the write, or answers what it answered before. The write runs in the transaction that
   * stores the key.
   *
   * @param body what was sent, as read, or a file
   * @param write answers a response with a JSON entity, perhaps Location and ETag
   */
  public Response once(Object body, Supplier<Response> write) {
    String key = key();
    Result result =
        idempotency.once(actor.get().memberId(), key, fingerprint(body), () -> answer(write.get()));
    if (result instanceof Answered answered) {
      return response(answered.answer());
    }
    throw (result instanceof OtherPayload
            ? Problems.of(
                ProblemKind.KEY_REUSED, "This Idempotency-Key was used for something else.")
            : Problems.of(ProblemKind.KEY_RUNNING, "The same request is still running."))
        .exception();
  }

  /**
   * The key without the quotes a structured field (RFC 9651) puts round it; 400 where it is missing
   * or cannot be one.
   */
  String key() {
    String header = request.request().getHeader(HEADER);
    if (header == null || header.isBlank()) {
      throw Problems.of(
              ProblemKind.KEY_MISSING, "Send an Idempotency-Key, new for each thing you post.")
          .exception();
    }
    String key = header.strip();
    if (key.length() > 1 && key.startsWith("\"") && key.endsWith("\"")) {
      key = key.substring(1, key.length() - 1);
    }
    boolean printable = key.chars().allMatch(c -> c > ' ' && c < 0x7F);
    if (key.isEmpty() || key.length() > MemberLimits.WRITE_KEY_MAX || !printable) {
      throw Problems.of(
              ProblemKind.KEY_INVALID,
              "An Idempotency-Key has 1 to " + MemberLimits.WRITE_KEY_MAX + " visible characters.")
          .exception();
    }
    return key;
  }

  private byte[] fingerprint(Object body) {
    try {
      MessageDigest sha = DigestUtils.getSha256Digest();
      String what = request.request().method().name() + " " + request.normalizedPath() + "\n";
      sha.update(what.getBytes(StandardCharsets.UTF_8));
      return (body instanceof Path file
              ? DigestUtils.updateDigest(sha, file)
              : DigestUtils.updateDigest(sha, json.writeValueAsBytes(body)))
          .digest();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Answer answer(Response response) {
    try {
      Object entity = response.getEntity();
      return new Answer(
          response.getStatus(),
          response.getHeaderString(HttpHeaders.LOCATION),
          response.getHeaderString(HttpHeaders.ETAG),
          entity == null ? null : json.writeValueAsString(entity));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Response response(Answer answer) {
    Response.ResponseBuilder response = Response.status(answer.status());
    if (answer.body() != null) {
      response.entity(answer.body()).type(MediaType.APPLICATION_JSON_TYPE);
    }
    if (answer.location() != null) {
      response.header(HttpHeaders.LOCATION, answer.location());
    }
    if (answer.etag() != null) {
      response.header(HttpHeaders.ETAG, answer.etag());
    }
    return response.build();
  }
}

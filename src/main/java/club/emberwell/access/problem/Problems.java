package club.emberwell.access.problem;

import club.emberwell.access.problem.Problem.Fault;
import club.emberwell.catalog.Ban;
import club.emberwell.member.Scope;
import club.emberwell.remark.Remark;
import jakarta.ws.rs.core.HttpHeaders;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Makes problems of whatever went wrong. */
public final class Problems {
  /** RFC 4918; JAX-RS has no name for it. */
  private static final int UNPROCESSABLE = 422;

  private static final int PRECONDITION_REQUIRED = 428;
  private static final int TOO_MANY_REQUESTS = 429;
  private static final Map<Integer, String> TITLES =
      Map.ofEntries(
          Map.entry(400, "Cannot be read"),
          Map.entry(401, "Sign in first"),
          Map.entry(403, "Not allowed"),
          Map.entry(404, "Not found"),
          Map.entry(405, "Not possible here"),
          Map.entry(406, "Not in that format"),
          Map.entry(409, "Conflict"),
          Map.entry(410, "Gone"),
          Map.entry(412, "Changed in the meantime"),
          Map.entry(413, "Too large"),
          Map.entry(415, "Not in that format"),
          Map.entry(UNPROCESSABLE, "Please check some entries"),
          Map.entry(PRECONDITION_REQUIRED, "A condition is missing"),
          Map.entry(TOO_MANY_REQUESTS, "Too many tries"),
          Map.entry(500, "Our own error"),
          Map.entry(503, "Not available right now"));

  private Problems() {}

  /** A problem of any status. */
  public static Problem of(int status, String detail) {
    return of(status, detail, List.of());
  }

  public static Problem of(int status, String detail, List<Fault> errors) {
    String title = TITLES.getOrDefault(status, status < 500 ? "Not done" : TITLES.get(500));
    return new Problem(title, status, detail, null, errors, Map.of(), Map.of());
  }

  /** 422 with every remark that is an error, by field. */
  public static Problem of(List<Remark> remarks) {
    List<Fault> faults = remarks.stream().filter(Remark::isError).map(Fault::of).toList();
    String detail =
        faults.size() == 1
            ? faults.get(0).detail()
            : faults.size() + " entries need to be checked.";
    return of(UNPROCESSABLE, detail, faults);
  }

  /** 422 with what is known of the hazard, for work that takes no settings. */
  public static Problem prohibited(Ban ban) {
    Fault fault = new Fault("/material", ban.sentence(), List.of());
    Problem problem = of(UNPROCESSABLE, ban.sentence(), List.of(fault));
    Map<String, String> hazard = new LinkedHashMap<>();
    hazard.put("subject", ban.subject());
    hazard.put("hazard", ban.hazard());
    hazard.put("agent", ban.agent());
    hazard.put("source", ban.source());
    return new Problem(
        problem.title(),
        problem.status(),
        problem.detail(),
        null,
        problem.errors(),
        Map.of("prohibited", hazard),
        Map.of());
  }

  /** 400 at one field. */
  public static Problem unreadable(String pointer, String detail) {
    return of(400, detail, List.of(new Fault(pointer, detail, List.of())));
  }

  public static Problem unauthorized(boolean refused) {
    String challenge = "Bearer realm=\"emberwell\"";
    return refused
        ? of(401, "This token is unknown, revoked or expired.")
            .with(HttpHeaders.WWW_AUTHENTICATE, challenge + ", error=\"invalid_token\"")
        : of(401, "Please sign in first.").with(HttpHeaders.WWW_AUTHENTICATE, challenge);
  }

  public static Problem forbidden() {
    return of(403, "Your role does not allow this.");
  }

  /** RFC 6750, section 3.1. */
  public static Problem scopeMissing(Scope missing, Set<Scope> granted) {
    String has = String.join(", ", Scope.codes(granted));
    return of(
            403,
            "This token lacks the scope %s; it has %s. Make one with %s on your account page."
                .formatted(missing.code(), has.isEmpty() ? "none" : has, missing.code()))
        .with(
            HttpHeaders.WWW_AUTHENTICATE,
            "Bearer realm=\"emberwell\", error=\"insufficient_scope\", scope=\"%s\""
                .formatted(missing.code()));
  }

  /** 404 that tells nothing about whether it exists for others. */
  public static Problem notFound() {
    return of(404, "There is nothing here.");
  }

  public static Problem tooLarge(long limit) {
    return of(413, "At most " + limit + " bytes can be sent here.");
  }

  public static Problem changed() {
    return of(412, "It has changed since you read it. Read it again and decide again.");
  }

  public static Problem conditionMissing() {
    return of(PRECONDITION_REQUIRED, "Send If-Match with the ETag you read.");
  }

  /** Of somebody who is asked to prove who they are, and is no program with a token. */
  public static Problem unproven(String why) {
    return of(401, why).with(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
  }

  public static Problem tooMany(Duration wait) {
    return of(TOO_MANY_REQUESTS, "Too many tries: come back in " + wait.toSeconds() + " seconds.")
        .with(HttpHeaders.RETRY_AFTER, Long.toString(wait.toSeconds()));
  }

  public static Problem slower(Duration wait) {
    String said = "Too much in a short time. Wait %d seconds, then send it again.";
    return of(TOO_MANY_REQUESTS, said.formatted(wait.toSeconds()))
        .with(HttpHeaders.RETRY_AFTER, Long.toString(wait.toSeconds()));
  }

  /** Our fault: nothing but a number to ask the operator about. */
  public static Problem internal(String id) {
    return new Problem(
        TITLES.get(500),
        500,
        "Something went wrong here. The operator can find it in the log as " + id + ".",
        id,
        List.of(),
        Map.of(),
        Map.of());
  }

  /** The database is away or full; nothing was stored. */
  public static Problem unavailable() {
    return of(503, "The database cannot answer right now. Try again in a moment.")
        .with(HttpHeaders.RETRY_AFTER, "3");
  }
}

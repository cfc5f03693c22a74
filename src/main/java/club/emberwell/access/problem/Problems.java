package club.emberwell.access.problem;

import club.emberwell.access.problem.Problem.Fault;
import club.emberwell.catalog.Ban;
import club.emberwell.member.Scope;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.TooManyTries;
import club.emberwell.remark.TurnedDown;
import club.emberwell.remark.Unproven;
import jakarta.ws.rs.core.HttpHeaders;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Makes problems of whatever went wrong. */
public final class Problems {
  private static final long MEGABYTE = 1 << 20;

  private static final Set<String> AMBIGUITIES =
      Set.of(
          RemarkId.NUMBER_AMBIGUOUS.code(),
          RemarkId.UNIT_AMBIGUOUS.code(),
          RemarkId.UNIT_MISSING.code(),
          RemarkId.FRACTION_AMBIGUOUS.code(),
          RemarkId.DENOMINATOR_MISSING.code());

  private Problems() {}

  public static Problem of(ProblemKind kind, String detail) {
    return of(kind, detail, List.of());
  }

  public static Problem of(ProblemKind kind, String detail, List<Fault> errors) {
    return new Problem(kind, detail, null, errors, Map.of(), Map.of());
  }

  /** What it is to be told no. */
  public static ProblemKind kind(TurnedDown why) {
    if (why instanceof EntryForbidden forbidden) {
      return switch (forbidden.why()) {
        case NOT_YOURS -> ProblemKind.NOT_YOURS;
        case YOUR_OWN -> ProblemKind.YOUR_OWN;
        case ROLE -> ProblemKind.ROLE_MISSING;
        case STATE -> ProblemKind.STATE_FORBIDS;
        case CLUB -> ProblemKind.DOOR_CLOSED;
        case ACCOUNT -> ProblemKind.ACCOUNT_CLOSED;
      };
    }
    if (why instanceof TooManyTries) {
      return ProblemKind.TOO_MANY_TRIES;
    }
    return why instanceof Unproven ? ProblemKind.NOT_PROVEN : ProblemKind.CONFIRMATION_REQUIRED;
  }

  /** 422 with every remark that is an error, by field. */
  public static Problem of(List<Remark> remarks) {
    List<Remark> refused = remarks.stream().filter(Remark::isError).toList();
    List<Fault> faults = refused.stream().map(Fault::of).toList();
    String detail =
        faults.size() == 1
            ? faults.get(0).detail()
            : faults.size() + " entries need to be checked.";
    boolean ambiguous =
        !refused.isEmpty() && refused.stream().allMatch(r -> AMBIGUITIES.contains(r.id()));
    return of(
        ambiguous ? ProblemKind.AMBIGUOUS_QUANTITY : ProblemKind.INVALID_FIELDS, detail, faults);
  }

  /** 422 with what is known of the hazard, for work that takes no settings. */
  public static Problem prohibited(Ban ban) {
    Fault fault = new Fault("/material", ban.sentence(), List.of());
    Map<String, String> hazard = new LinkedHashMap<>();
    hazard.put("subject", ban.subject());
    hazard.put("hazard", ban.hazard());
    hazard.put("agent", ban.agent());
    hazard.put("source", ban.source());
    return new Problem(
        ProblemKind.PROHIBITED_WORK,
        ban.sentence(),
        null,
        List.of(fault),
        Map.of("prohibited", hazard),
        Map.of());
  }

  /**
   * At one field of the body or one parameter of the address.
   *
   * @param pointer JSON pointer (RFC 6901); empty = the whole
   */
  public static Problem at(ProblemKind kind, String pointer, String detail) {
    return of(kind, detail, List.of(new Fault(pointer, detail, List.of())));
  }

  public static Problem unauthorized(boolean refused) {
    String challenge = "Bearer realm=\"emberwell\"";
    return refused
        ? of(ProblemKind.TOKEN_UNKNOWN, "This token is unknown, revoked or expired.")
            .with(HttpHeaders.WWW_AUTHENTICATE, challenge + ", error=\"invalid_token\"")
        : of(ProblemKind.SIGN_IN_NEEDED, "Please sign in first.")
            .with(HttpHeaders.WWW_AUTHENTICATE, challenge);
  }

  public static Problem forbidden() {
    return of(ProblemKind.ROLE_MISSING, "Your role does not allow this.");
  }

  /** RFC 6750, section 3.1. */
  public static Problem scopeMissing(Scope missing, Set<Scope> granted) {
    String has = String.join(", ", Scope.codes(granted));
    return of(
            ProblemKind.SCOPE_MISSING,
            "This token lacks the scope %s; it has %s. Make one with %s on your account page."
                .formatted(missing.code(), has.isEmpty() ? "none" : has, missing.code()))
        .with(
            HttpHeaders.WWW_AUTHENTICATE,
            "Bearer realm=\"emberwell\", error=\"insufficient_scope\", scope=\"%s\""
                .formatted(missing.code()));
  }

  /** 404 that tells nothing about whether it exists for others. */
  public static Problem notFound() {
    return of(ProblemKind.NOT_FOUND, "Nothing has this address.");
  }

  public static Problem tooLarge(long limit) {
    String most = limit >= MEGABYTE ? limit / MEGABYTE + " MB" : limit / 1024 + " kB";
    return of(ProblemKind.TOO_LARGE, "At most " + most + " can be sent here.");
  }

  public static Problem changed() {
    return of(
        ProblemKind.CHANGED, "It has changed since you read it. Read it again and decide again.");
  }

  public static Problem conditionMissing() {
    return of(ProblemKind.CONDITION_MISSING, "Send If-Match with the ETag you read.");
  }

  /** Of somebody who is asked to prove who they are, and is no program with a token. */
  public static Problem unproven(String why) {
    return of(ProblemKind.NOT_PROVEN, why).with(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
  }

  /** RFC 9470, section 3. */
  public static Problem confirmation(String why) {
    return of(ProblemKind.CONFIRMATION_REQUIRED, why)
        .with(
            HttpHeaders.WWW_AUTHENTICATE,
            "Bearer realm=\"emberwell\", error=\"insufficient_user_authentication\","
                + " error_description=\"%s\"".formatted(why));
  }

  public static Problem tooMany(Duration wait) {
    return of(
            ProblemKind.TOO_MANY_TRIES,
            "Too many tries: come back in " + wait.toSeconds() + " seconds.")
        .with(HttpHeaders.RETRY_AFTER, Long.toString(wait.toSeconds()));
  }

  public static Problem busy(Duration wait) {
    return of(ProblemKind.BUSY, tooMany(wait).detail())
        .with(HttpHeaders.RETRY_AFTER, Long.toString(wait.toSeconds()));
  }

  public static Problem slower(Duration wait) {
    String said = "Too much in a short time. Wait %d seconds, then send it again.";
    return of(ProblemKind.TOO_FAST, said.formatted(wait.toSeconds()))
        .with(HttpHeaders.RETRY_AFTER, Long.toString(wait.toSeconds()));
  }

  /** Our fault: nothing but a number to ask the operator about. */
  public static Problem internal(String id) {
    return new Problem(
        ProblemKind.OWN_FAULT,
        "Something went wrong here. The operator can find it in the log as " + id + ".",
        id,
        List.of(),
        Map.of(),
        Map.of());
  }

  /** The database is away or full; nothing was stored. */
  public static Problem unavailable() {
    return of(
            ProblemKind.UNAVAILABLE, "The database cannot answer right now. Try again in a moment.")
        .with(HttpHeaders.RETRY_AFTER, "3");
  }

  /** One address has too much open. */
  public static Problem crowded() {
    return of(
            ProblemKind.CROWDED,
            "Too many requests from your address are open. Try again in a moment.")
        .with(HttpHeaders.RETRY_AFTER, "5");
  }

  /** Neither the disk nor the database has room for it. */
  public static Problem storageFull() {
    return of(
        ProblemKind.STORAGE_FULL,
        "The server's disk is full, so nothing was stored. Please tell the operator.");
  }
}

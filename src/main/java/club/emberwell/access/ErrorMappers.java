package club.emberwell.access;

import club.emberwell.access.problem.Departed;
import club.emberwell.access.problem.Errors;
import club.emberwell.access.problem.JsonFaults;
import club.emberwell.access.problem.Problem;
import club.emberwell.access.problem.Problem.Fault;
import club.emberwell.access.problem.ProblemException;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.access.problem.Unavailable;
import club.emberwell.card.LinkEnded;
import club.emberwell.entry.Gone;
import club.emberwell.exchange.bench.CopiesBusy;
import club.emberwell.listing.PartRefused;
import club.emberwell.member.session.HashingBusy;
import club.emberwell.remark.ConfirmationNeeded;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.TooManyTries;
import club.emberwell.remark.Unproven;
import club.emberwell.report.EntryUnconfirmed;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.copy.CopyOutdated;
import club.emberwell.report.photo.PictureRefused;
import club.emberwell.report.photo.PicturesBusy;
import club.emberwell.search.index.IndexDamage;
import club.emberwell.search.index.IndexNotReady;
import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import io.vertx.ext.web.RoutingContext;
import jakarta.persistence.OptimisticLockException;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.Response.Status;
import java.time.Duration;
import java.util.List;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** One place where exceptions become answers; none of them shows a class or a statement. */
class ErrorMappers {
  private static final Logger LOG = Logger.getLogger(ErrorMappers.class);
  private static final int BEFORE_BUILT_IN = Priorities.USER - 1000;

  /** Seconds in which an index that is being opened may be ready. */
  private static final String SOON = "5";

  private static final Duration BUSY = Duration.ofSeconds(2);

  private final Errors errors;
  private final ScopeGate gate;
  private final AllowedMethods allowed;
  private final RoutingContext request;

  ErrorMappers(Errors errors, ScopeGate gate, AllowedMethods allowed, RoutingContext request) {
    this.errors = errors;
    this.gate = gate;
    this.allowed = allowed;
    this.request = request;
  }

  @ServerExceptionMapper
  Response problem(ProblemException e) {
    return errors.answer(e.problem());
  }

  @ServerExceptionMapper
  Response refused(EntryRefused e) {
    return errors.answer(Problems.of(e.remarks()));
  }

  @ServerExceptionMapper
  Response forbidden(EntryForbidden e) {
    return errors.answer(Problems.of(Problems.kind(e), e.getMessage()));
  }

  @ServerExceptionMapper
  Response unknown(EntryUnknown e) {
    return errors.answer(Problems.of(ProblemKind.NOT_FOUND, e.getMessage()));
  }

  @ServerExceptionMapper
  Response noPart(PartRefused e) {
    return errors.answer(Problems.at(ProblemKind.INVALID_PARAMETER, e.pointer(), e.getMessage()));
  }

  @ServerExceptionMapper
  Response outdated(CopyOutdated e) {
    return errors.answer(Problems.of(ProblemKind.COPY_OUTDATED, e.getMessage()));
  }

  @ServerExceptionMapper
  Response gone(Gone e) {
    return errors.answer(
        Problems.of(e.withdrawn() ? ProblemKind.WITHDRAWN : ProblemKind.REMOVED, e.getMessage()));
  }

  @ServerExceptionMapper
  Response ended(LinkEnded e) {
    return errors.answer(Problems.of(ProblemKind.LINK_ENDED, e.getMessage()));
  }

  @ServerExceptionMapper
  Response changed(EntryChanged e) {
    return errors.answer(Problems.changed().with(HttpHeaders.ETAG, Etags.of(e.version())));
  }

  @ServerExceptionMapper
  Response overtaken(OptimisticLockException e) {
    return errors.answer(Problems.changed());
  }

  @ServerExceptionMapper
  Response unconfirmed(EntryUnconfirmed e) {
    List<Fault> faults = e.warnings().stream().map(Fault::of).toList();
    return errors.answer(Problems.of(ProblemKind.UNCONFIRMED, e.getMessage(), faults));
  }

  @ServerExceptionMapper
  Response prohibited(ProhibitedWork e) {
    return errors.answer(Problems.prohibited(e.ban()));
  }

  @ServerExceptionMapper
  Response picture(PictureRefused e) {
    ProblemKind kind =
        switch (e.fault()) {
          case TOO_BIG -> ProblemKind.TOO_LARGE;
          case OTHER_FORMAT -> ProblemKind.FORMAT_NOT_ACCEPTED;
          case TOO_MANY_PIXELS, TOO_COSTLY, UNREADABLE -> ProblemKind.PICTURE_UNREADABLE;
        };
    Fault fault = new Fault("/photo", e.getMessage(), List.of());
    return errors.answer(Problems.of(kind, e.getMessage(), List.of(fault)));
  }

  @ServerExceptionMapper
  Response picturesBusy(PicturesBusy e) {
    return errors.answer(
        Problems.of(ProblemKind.PICTURES_BUSY, e.getMessage())
            .with(HttpHeaders.RETRY_AFTER, Long.toString(e.retryAfter().toSeconds())));
  }

  @ServerExceptionMapper
  Response copiesBusy(CopiesBusy e) {
    return errors.answer(
        Problems.of(ProblemKind.BUSY, e.getMessage())
            .with(HttpHeaders.RETRY_AFTER, Long.toString(e.retryAfter().toSeconds())));
  }

  @ServerExceptionMapper
  Response notReady(IndexNotReady e) {
    return errors.answer(
        Problems.of(ProblemKind.INDEX_NOT_READY, e.getMessage())
            .with(HttpHeaders.RETRY_AFTER, SOON));
  }

  @ServerExceptionMapper
  Response unproven(Unproven e) {
    return errors.answer(Problems.unproven(e.getMessage()));
  }

  @ServerExceptionMapper
  Response unconfirmed(ConfirmationNeeded e) {
    return errors.answer(Problems.confirmation(e.getMessage()));
  }

  @ServerExceptionMapper
  Response tooManyTries(TooManyTries e) {
    return errors.answer(Problems.tooMany(e.retryAfter()));
  }

  @ServerExceptionMapper
  Response busy(HashingBusy e) {
    return errors.answer(Problems.busy(BUSY));
  }

  @ServerExceptionMapper(priority = BEFORE_BUILT_IN)
  Response unauthorized(UnauthorizedException e) {
    return errors.answer(Problems.unauthorized(false));
  }

  @ServerExceptionMapper(priority = BEFORE_BUILT_IN)
  Response notProven(AuthenticationFailedException e) {
    return errors.answer(Problems.unauthorized(true));
  }

  @ServerExceptionMapper(priority = BEFORE_BUILT_IN)
  Response forbidden(ForbiddenException e) {
    return errors.answer(gate.forbidden());
  }

  @ServerExceptionMapper(priority = BEFORE_BUILT_IN)
  Response unreadable(JacksonException e) {
    // Jackson wraps what is thrown from under its reading, e.g. by the limit on bytes
    return e.getCause() instanceof ProblemException own
        ? problem(own)
        : errors.answer(JsonFaults.of(e));
  }

  /** Named by itself, because Quarkus brings a mapper of its own for it. */
  @ServerExceptionMapper(priority = BEFORE_BUILT_IN)
  Response mismatched(MismatchedInputException e) {
    return unreadable(e);
  }

  @ServerExceptionMapper(priority = BEFORE_BUILT_IN)
  Response http(WebApplicationException e) {
    Response own = e.getResponse();
    if (own.getStatus() < 400 || own.hasEntity()) {
      return own;
    }
    if (e.getCause() instanceof JacksonException json) {
      return unreadable(json);
    }
    if (own.getStatus() >= 500) {
      return failed(e);
    }
    Problem problem = refused(own.getStatus());
    return errors.answer(
        own.getStatus() == Status.METHOD_NOT_ALLOWED.getStatusCode()
            ? problem.with(
                HttpHeaders.ALLOW, String.join(", ", allowed.of(request.normalizedPath())))
            : problem);
  }

  @ServerExceptionMapper(priority = BEFORE_BUILT_IN)
  Response failed(Throwable e) {
    if (Departed.is(e, request.response())) {
      LOG.debugf("whoever asked did not wait for the answer: %s", e.getMessage());
      return Response.noContent().build();
    }
    if (Unavailable.isFull(e)) {
      LOG.errorf("there is no room left: %s", e.getMessage());
      return errors.answer(Problems.storageFull());
    }
    if (Unavailable.is(e)) {
      LOG.warnf("the database cannot answer: %s", e.getMessage());
      return errors.answer(Problems.unavailable());
    }
    if (IndexDamage.is(e)) {
      LOG.errorf("the search index cannot be read: %s", e);
      return notReady(new IndexNotReady());
    }
    String id = RequestIds.of(request);
    LOG.errorf(e, "request failed, told as %s", id);
    return errors.answer(Problems.internal(id));
  }

  /** What the framework turns back by itself. */
  private static Problem refused(int status) {
    return switch (status) {
      case 401 -> Problems.unauthorized(false);
      case 403 -> Problems.of(ProblemKind.ROLE_MISSING, "This is not allowed.");
      case 404 -> Problems.notFound();
      case 405 ->
          Problems.of(ProblemKind.METHOD_NOT_ALLOWED, "This address does not accept that method.");
      case 406 ->
          Problems.of(
              ProblemKind.FORMAT_NOT_AVAILABLE, "This is not available in the format you accept.");
      case 413 -> Problems.of(ProblemKind.TOO_LARGE, "That is more than can be sent here.");
      case 415 ->
          Problems.of(
              ProblemKind.FORMAT_NOT_ACCEPTED, "This address does not accept that content type.");
      default -> Problems.of(ProblemKind.INVALID_REQUEST, "The request cannot be read.");
    };
  }
}

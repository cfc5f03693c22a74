package club.emberwell.api.report;

import club.emberwell.access.Errors;
import club.emberwell.access.Problem;
import club.emberwell.access.Problems;
import club.emberwell.catalog.Ban;
import club.emberwell.report.EntryUnconfirmed;
import club.emberwell.report.PictureRefused;
import club.emberwell.report.PictureRefused.Fault;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.ReportGone;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** What is peculiar to reports, as answers. */
class ReportErrors {
  private static final int UNPROCESSABLE = 422;

  private final Errors errors;

  ReportErrors(Errors errors) {
    this.errors = errors;
  }

  @ServerExceptionMapper
  Response gone(ReportGone e) {
    return errors.answer(Problems.of(Response.Status.GONE.getStatusCode(), e.getMessage()));
  }

  @ServerExceptionMapper
  Response unconfirmed(EntryUnconfirmed e) {
    List<Problem.Fault> faults = e.warnings().stream().map(Problem.Fault::of).toList();
    return errors.answer(Problems.of(UNPROCESSABLE, e.getMessage(), faults));
  }

  @ServerExceptionMapper
  Response prohibited(ProhibitedWork e) {
    Ban ban = e.ban();
    Problem.Fault fault = new Problem.Fault("/material", ban.sentence(), List.of());
    Problem problem = Problems.of(UNPROCESSABLE, ban.sentence(), List.of(fault));
    Response answer = errors.answer(problem);
    return answer.getEntity() == problem
        ? Response.fromResponse(answer).entity(new Prohibition(problem, Hazard.of(ban))).build()
        : answer;
  }

  @ServerExceptionMapper
  Response picture(PictureRefused e) {
    int status =
        e.fault() == Fault.TOO_BIG
            ? Response.Status.REQUEST_ENTITY_TOO_LARGE.getStatusCode()
            : e.fault() == Fault.OTHER_FORMAT
                ? Response.Status.UNSUPPORTED_MEDIA_TYPE.getStatusCode()
                : UNPROCESSABLE;
    Problem.Fault fault = new Problem.Fault("/photo", e.getMessage(), List.of());
    return errors.answer(Problems.of(status, e.getMessage(), List.of(fault)));
  }

  /** The problem with the hazard as an extension member (RFC 9457, section 3.2). */
  record Prohibition(@JsonUnwrapped Problem problem, Hazard prohibited) {}

  /** Why the work takes no settings. */
  record Hazard(String subject, String hazard, String agent, String source) {
    static Hazard of(Ban ban) {
      return new Hazard(ban.subject(), ban.hazard(), ban.agent(), ban.source());
    }
  }
}

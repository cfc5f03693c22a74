package club.emberwell.web.share;

import club.emberwell.access.problem.Problems;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.entry.EntryState;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.report.ReportService;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.talk.Markdown;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkService;
import club.emberwell.web.answer.AnswerView;
import club.emberwell.web.answer.AnswerViews;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.trial.ReportText;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/** Pictures of pages for link previews; who may not read here gets none. */
@Path("/preview")
@Produces("image/png")
@Blocking
@RolesAllowed(Role.READ)
public class PreviewPictures extends Pages {
  private static final int HOUR = 3600;

  private final CardPictures pictures;
  private final ReportService reports;
  private final TalkService talk;
  private final ConsensusService consensus;
  private final AnswerViews answers;
  private final CatalogService catalog;

  PreviewPictures(
      CardPictures pictures,
      ReportService reports,
      TalkService talk,
      ConsensusService consensus,
      AnswerViews answers,
      CatalogService catalog) {
    this.pictures = pictures;
    this.reports = reports;
    this.talk = talk;
    this.consensus = consensus;
    this.answers = answers;
    this.catalog = catalog;
  }

  @GET
  @Path("reports/{id}.png")
  public Response report(@RestPath UUID id) {
    Actor actor = actor();
    ReportSnapshot report = reports.get(actor, id).snapshot();
    if (report.state() != EntryState.LIVE) {
      throw Problems.notFound().exception();
    }
    Catalog now = catalog.snapshot();
    return answer(
        new Card(
            club(),
            WorkText.of(report, now.vocabulary(), actor.units())
                + ", "
                + report.process().label().toLowerCase(Locale.ROOT),
            ReportText.outcome(report),
            List.of(
                ReportText.line(ReportText.best(report).get(0), actor.units()),
                ReportText.caution(report, now)
                    .orElseGet(() -> TrialText.laser(report.laser(), actor.units())),
                "by " + report.author().handle()),
            null));
  }

  @GET
  @Path("ask/{id}.png")
  public Response question(@RestPath UUID id) {
    TalkEntry question = talk.thread(actor(), id, Part.FIRST).question();
    if (!question.isLive()) {
      throw Problems.notFound().exception();
    }
    return answer(
        new Card(
            club(),
            question.written().title(),
            question.answers() == 1 ? "1 answer" : question.answers() + " answers",
            List.of(Markdown.plain(question.written().text()), question.memberHandle() + " asks"),
            null));
  }

  /** Of a search or its range: the answer with most members. */
  @GET
  @Path("range.png")
  public Response range(@Context UriInfo uri) {
    Actor actor = actor();
    SearchQueryCodec.Parsed parsed =
        SearchQueryCodec.read(
            uri.getQueryParameters(),
            catalog.snapshot().vocabulary(),
            Set.of(),
            actor.units().style());
    List<AnswerView> panels =
        answers.onRange(
            consensus.answer(new ConsensusService.Ask(parsed.query(), actor, null, null, false)),
            parsed.query(),
            actor);
    if (!parsed.problems().isEmpty() || panels.isEmpty()) {
      throw Problems.notFound().exception();
    }
    AnswerView first = panels.get(0);
    return answer(
        new Card(
            club(),
            first.head().work() + ", " + first.head().process(),
            first.start().title(),
            List.of(
                first.head().laser() == null ? "" : first.head().laser(),
                first.start().said().stream().findFirst().orElse(""),
                first.evidence().word() + ": " + first.evidence().counts()),
            first.plot() == null ? null : first.plot().plot()));
  }

  /** Whose it is, and that it may be invented: a picture goes where no page says so. */
  private String club() {
    return page.isExample() ? page.getClubName() + " · with invented examples" : page.getClubName();
  }

  private Response answer(Card card) {
    return pictures
        .of(card)
        .map(
            png ->
                Response.ok(png)
                    .header(
                        "Cache-Control",
                        (page.isPublic() ? "public" : "private") + ", max-age=" + HOUR))
        .orElseGet(
            () ->
                Response.seeOther(URI.create(page.asset("icons/512.png")))
                    .header("Cache-Control", "no-store"))
        .build();
  }
}

package club.emberwell.web.grid;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.grid.photo.GridPhotos;
import club.emberwell.grid.result.GridResults;
import club.emberwell.grid.result.Results;
import club.emberwell.grid.result.WrittenResults;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.Words;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/** Says how the tests of a grid came out, cell by cell. */
@Path("/grids")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class ResultPages extends Pages {
  private final GridResults results;
  private final GridPhotos photos;
  private final CatalogService catalog;
  private final Words words;

  ResultPages(GridResults results, GridPhotos photos, CatalogService catalog, Words words) {
    this.results = results;
    this.photos = photos;
    this.catalog = catalog;
    this.words = words;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance results(JudgingView grid, List<String> defects);
  }

  @GET
  @Path("{id}/results")
  public TemplateInstance results(@RestPath UUID id) {
    Results found = results.of(actor(), id);
    return shown(found, form(found, null));
  }

  private Form form(Results found, SentForm sent) {
    return ResultForm.of(found, catalog.snapshot().vocabulary(), text(found), sent);
  }

  private CellText text(Results found) {
    return new CellText(found.plan(), actor().units());
  }

  private TemplateInstance shown(Results found, Form form) {
    return Templates.results(
        JudgingView.of(found, form, photos.of(actor(), found.grid().id()), actor().units()),
        words.lists().defects());
  }

  @POST
  @Path("{id}/results")
  public Response send(@RestPath UUID id, SentForm sent) {
    Results before = results.even(actor(), id);
    return take(sent, () -> form(results.even(actor(), id), sent), form -> shown(before, form))
        .store(s -> keep(id, before, s))
        // the report's page, as an answer that leads there waits until it can be found
        .then(kept -> "/reports/" + kept.grid().report() + "?saved");
  }

  private Results keep(UUID id, Results before, SentForm sent) {
    WrittenResults written = ResultForm.written(sent, before.plan());
    if (!sent.remarks().isEmpty()) {
      throw new EntryRefused(sent.remarks());
    }
    return results.send(actor(), id, sent.version(), written, results.shown(actor(), id, written));
  }
}

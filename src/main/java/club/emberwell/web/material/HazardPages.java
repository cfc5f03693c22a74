package club.emberwell.web.material;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.HazardCard;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.caution.TermLink;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestPath;

/** Hazard cards of materials and coatings, one printed page each. */
@Path("/materials")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.READ)
public class HazardPages extends Pages {
  private static final int MOVED = 308;

  private final CatalogService catalog;

  HazardPages(CatalogService catalog) {
    this.catalog = catalog;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance card(HazardView view);
  }

  @GET
  @Path("{slug}/hazards")
  public Response material(@RestPath String slug) {
    return card(TermKind.MATERIAL, slug);
  }

  @GET
  @Path("coating/{slug}/hazards")
  public Response coating(@RestPath String slug) {
    return card(TermKind.COATING, slug);
  }

  private Response card(TermKind kind, String slug) {
    Catalog now = catalog.snapshot();
    Term term =
        now.vocabulary().successor(kind, slug).orElseThrow(() -> new EntryUnknown(kind.code()));
    String path = TermLink.card(term);
    if (!term.slug().equals(slug)) {
      return Response.status(MOVED).location(URI.create(path)).build();
    }
    HazardView view = HazardView.of(HazardCard.of(now, term), actor().units());
    page.preview(Preview.of(path, view.getDescription()));
    return Response.ok(Templates.card(view)).build();
  }
}

package club.emberwell.web.about;

import club.emberwell.access.PublicUrl;
import club.emberwell.access.contract.ApiDocument;
import club.emberwell.member.Role;
import club.emberwell.quantity.UnitWords;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.about.ApiReference.Part;
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
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;

/** How programs talk to the club: the API's description, readable. */
@Path("/help/api")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.READ)
public class ApiPages extends Pages {
  private final ApiReference reference;
  private final ApiDocument document;
  private final PublicUrl url;

  ApiPages(ApiReference reference, ApiDocument document, PublicUrl url) {
    this.reference = reference;
    this.document = document;
    this.url = url;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance api(
        List<Part> parts, String base, List<UnitWords> units, List<UnitWords.Words> per);

    static native TemplateInstance part(Part part);
  }

  @GET
  public TemplateInstance index() {
    page.preview(
        Preview.of(
            "/help/api",
            "The JSON API of "
                + page.getClubName()
                + ": every operation with its parameters, answers, problems and an example."));
    return Templates.api(reference.parts(), url.of(""), UnitWords.all(), UnitWords.per());
  }

  @GET
  @Path("{part}")
  public TemplateInstance part(@RestPath String part) {
    Part found = reference.part(part).orElseThrow(() -> new EntryUnknown("part of the API"));
    page.preview(Preview.of("/help/api/" + found.slug(), found.label() + ": " + found.about()));
    return Templates.part(found);
  }

  /** The same as for programs, for whoever is signed in on pages and has no token. */
  @GET
  @Path("openapi.json")
  @Produces(MediaType.APPLICATION_JSON)
  public byte[] document() {
    return document.bytes();
  }
}

package club.emberwell.web.about;

import club.emberwell.member.Role;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** What this club and its numbers are, and how programs talk to it. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class AboutPages {
  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance about();

    static native TemplateInstance api();
  }

  @GET
  @Path("about")
  @PermitAll
  public TemplateInstance about() {
    return Templates.about();
  }

  @GET
  @Path("help/api")
  @RolesAllowed(Role.READ)
  public TemplateInstance api() {
    return Templates.api();
  }
}

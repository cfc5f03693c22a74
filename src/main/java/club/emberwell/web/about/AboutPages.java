package club.emberwell.web.about;

import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** What this club and its numbers are. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class AboutPages extends Pages {
  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance about();
  }

  @GET
  @Path("about")
  @PermitAll
  public TemplateInstance about() {
    page.preview(
        Preview.of(
            "/about",
            page.getClubName()
                + " collects laser settings of its members: on which material and coating, with"
                + " which laser, and how it came out. How to read the numbers, and safety."));
    return Templates.about();
  }
}

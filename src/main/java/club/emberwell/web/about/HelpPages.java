package club.emberwell.web.about;

import club.emberwell.member.Role;
import club.emberwell.member.account.FirstStep;
import club.emberwell.member.account.FirstSteps;
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

/** Explains the pictures and the words that go with them. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class HelpPages extends Pages {
  private static final WorkedRange WORKED = WorkedRange.of();

  private final FirstSteps steps;

  HelpPages(FirstSteps steps) {
    this.steps = steps;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance range(WorkedRange worked);
  }

  /** To look at it is one of a newcomer's first steps. */
  @GET
  @Path("help/range")
  @RolesAllowed(Role.READ)
  public TemplateInstance range() {
    steps.took(actor(), FirstStep.RANGE);
    page.preview(
        Preview.of(
            "/help/range",
            "How to read a range of laser settings: what the dots, the band, the curve and the"
                + " counts mean, with one picture."));
    return Templates.range(WORKED);
  }
}

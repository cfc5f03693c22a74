package club.emberwell.web.account;

import club.emberwell.member.Role;
import club.emberwell.member.session.SignIns;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;

/** Who came in as the member, was kept out, or left. */
@Path("/me/sign-ins")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class SignInPages extends Pages {
  private final SignIns signIns;

  SignInPages(SignIns signIns) {
    this.signIns = signIns;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance signIns(List<SignIns.View> events);
  }

  @GET
  public TemplateInstance signIns() {
    return Templates.signIns(signIns.of(actor().memberId()));
  }
}

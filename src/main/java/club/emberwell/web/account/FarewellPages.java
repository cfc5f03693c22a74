package club.emberwell.web.account;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** The last page: apart from the answer to the form, so that loading it again sends nothing. */
@Path("/farewell")
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class FarewellPages {
  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance farewell();
  }

  @GET
  public TemplateInstance farewell() {
    return Templates.farewell();
  }
}

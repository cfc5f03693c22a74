package club.emberwell.web.account;

import club.emberwell.member.account.Addresses;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;

/** Where the link in a letter leads that asks whether an address is somebody's. */
@Path("/confirm/{link}")
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class ConfirmPages {
  private final Addresses addresses;

  ConfirmPages(Addresses addresses) {
    this.addresses = addresses;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance confirm(String link, boolean works, boolean done);
  }

  @GET
  public Response ask(@RestPath String link) {
    boolean works = addresses.waits(link);
    return Response.status(works ? 200 : 404).entity(Templates.confirm(link, works, false)).build();
  }

  /** A POST, because programs that look through mail follow links by themselves. */
  @POST
  public Response confirm(@RestPath String link) {
    boolean done = addresses.confirm(link);
    return Response.status(done ? 200 : 404).entity(Templates.confirm(link, false, done)).build();
  }
}

package club.emberwell.web.account;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.FromOutside;
import club.emberwell.member.mail.Unsubscribing;
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

/** Ends letters by the link in them. */
@Path("/unsubscribe/{link}")
@Produces(MediaType.TEXT_HTML)
@Blocking
@PermitAll
public class UnsubscribePages {
  private final Unsubscribing letters;

  UnsubscribePages(Unsubscribing letters) {
    this.letters = letters;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance unsubscribe(String link, boolean works, boolean done);
  }

  @GET
  public Response ask(@RestPath String link) {
    boolean works = letters.read(link).isPresent();
    return Response.status(works ? 200 : 404)
        .entity(Templates.unsubscribe(link, works, false))
        .build();
  }

  /** Sent by a mail program too, which has neither cookie nor form (RFC 8058, section 3.2). */
  @POST
  @AtAnyPace
  @FromOutside
  public Response end(@RestPath String link) {
    boolean done = letters.end(link);
    return Response.status(done ? 200 : 404)
        .entity(Templates.unsubscribe(link, false, done))
        .build();
  }
}

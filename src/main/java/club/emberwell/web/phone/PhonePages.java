package club.emberwell.web.phone;

import club.emberwell.access.FormToken;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;

/** What a phone shows of itself: what waits on it to be sent, and what it opens offline. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class PhonePages extends Pages {
  private final FormToken token;

  PhonePages(FormToken token) {
    this.token = token;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance offline();

    static native TemplateInstance waiting();
  }

  /** Who would send, and with what a form of theirs is believed. */
  record Sender(UUID member, String handle, String token) {}

  /** Holds nothing of the server's, so that the phone can keep it. */
  @GET
  @Path("offline")
  @PermitAll
  public TemplateInstance offline() {
    return Templates.offline();
  }

  /** The list is the phone's own; the page is the same for everybody. */
  @GET
  @Path("waiting")
  @PermitAll
  public TemplateInstance waiting() {
    return Templates.waiting();
  }

  /** For a form that is sent later than it was written; 401 for a stranger. */
  @GET
  @Path("me/form-token")
  @Produces(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.WRITE)
  public Response formToken() {
    Actor sender = actor();
    return Response.ok(new Sender(sender.memberId(), sender.handle(), token.getToken()))
        .header("Cache-Control", "no-store")
        .build();
  }
}

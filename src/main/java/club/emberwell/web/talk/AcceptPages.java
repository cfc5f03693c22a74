package club.emberwell.web.talk;

import club.emberwell.member.Role;
import club.emberwell.talk.AcceptedAnswers;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/** Who asked says which answer helped. */
@Path("/ask")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class AcceptPages extends Pages {
  private final AcceptedAnswers accepted;

  AcceptPages(AcceptedAnswers accepted) {
    this.accepted = accepted;
  }

  /** An empty answer says that none helped after all. */
  @POST
  @Path("{id}/accept")
  @RolesAllowed(Role.WRITE)
  public Response accept(@RestPath UUID id, SentForm sent) {
    UUID helped = sent.id("answer");
    accepted.accept(actor(), id, helped, null);
    return to("/ask/" + id + (helped == null ? "" : "#answer-" + helped));
  }
}

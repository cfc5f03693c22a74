package club.emberwell.web.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/** Takes comments, which are written on the page of their report. */
@Path("/reports/{id}/comments")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class CommentPages extends Pages {
  private final TalkService talk;

  CommentPages(TalkService talk) {
    this.talk = talk;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    /** The form alone, with what is at fault in it. */
    static native TemplateInstance comment(String report, Form form);
  }

  @POST
  @RolesAllowed(Role.WRITE)
  public Response post(@RestPath UUID id, SentForm sent) {
    return take(sent, CommentPages::blank, form -> Templates.comment(id.toString(), form))
        .store(
            s ->
                talk.comment(
                        actor(),
                        id,
                        TalkPosting.of(s.id("id"), TalkForm.written(EntryKind.COMMENT, s)))
                    .entry())
        .then(TalkEntry::path);
  }

  static Form blank() {
    return TalkForm.of(EntryKind.COMMENT, UUID.randomUUID());
  }
}

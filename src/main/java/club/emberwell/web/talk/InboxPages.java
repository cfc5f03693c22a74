package club.emberwell.web.talk;

import club.emberwell.desk.told.Told;
import club.emberwell.listing.Slice;
import club.emberwell.member.Role;
import club.emberwell.quantity.UtcTime;
import club.emberwell.talk.watch.Find;
import club.emberwell.talk.watch.Inbox;
import club.emberwell.web.frame.FormPage;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The inbox: what one's watches found and answers to one's own questions. */
@Path("/inbox")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class InboxPages extends Pages {
  private final Inbox inbox;
  private final Told told;

  InboxPages(Inbox inbox, Told told) {
    this.inbox = inbox;
    this.told = told;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance inbox(Shown inbox);
  }

  /**
   * A page of the inbox.
   *
   * @param newest id of the newest find on it, or null where there is none
   * @param unread whether anything on it is unread
   * @param at when it was made
   */
  record Shown(List<Find> finds, Pager pager, Long newest, boolean unread, String at) {}

  @GET
  public TemplateInstance inbox(@RestQuery("page") String number) {
    String at = UtcTime.of(Instant.now());
    Slice<Find> page = inbox.page(actor(), Pager.part(number));
    List<Find> finds = page.rows();
    return Templates.inbox(
        new Shown(
            finds,
            Pager.of(page, "/inbox"),
            finds.isEmpty() ? null : finds.get(0).id(),
            finds.stream().anyMatch(find -> !find.read()),
            at));
  }

  @POST
  @Path("read")
  public Response readAll(@RestForm Long upTo, @RestForm OffsetDateTime at) {
    if (upTo != null) {
      inbox.markAllRead(actor(), upTo);
    }
    if (at != null) {
      told.read(actor(), at.toInstant());
    }
    return back();
  }

  @POST
  @Path("{id}/read")
  public Response read(@RestPath long id) {
    inbox.markRead(actor(), id);
    return back();
  }

  private static Response back() {
    return FormPage.to("/inbox");
  }
}

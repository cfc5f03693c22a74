package club.emberwell.web.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.web.frame.Opened;
import club.emberwell.web.frame.PageFrame;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Notices: what members should know of. */
@Path("/notices")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class NoticePages {
  private static final String NEW = "/notices/new";

  private final TalkService talk;
  private final TalkFinder finder;
  private final TalkViews views;
  private final CurrentActor current;
  private final PageFrame page;
  private final Opened opened;

  NoticePages(
      TalkService talk,
      TalkFinder finder,
      TalkViews views,
      CurrentActor current,
      PageFrame page,
      Opened opened) {
    this.talk = talk;
    this.finder = finder;
    this.views = views;
    this.current = current;
    this.page = page;
    this.opened = opened;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance notices(TalkViews.Listing list);

    static native TemplateInstance write(TalkViews.Writing writing);

    static native TemplateInstance notice(EntryView notice);
  }

  @GET
  @RolesAllowed(Role.READ)
  public TemplateInstance notices(@RestQuery String q, @RestQuery("page") String number) {
    int at = Pager.number(number);
    String text = q == null ? "" : q.strip();
    return Templates.notices(
        text.isEmpty()
            ? views.list(talk.latest(TalkKind.NOTICE, false, at), text, Shown.NOTICES)
            : views.list(finder.find(TalkKind.NOTICE, text, false, at), text, Shown.NOTICES));
  }

  @GET
  @Path("new")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance write() {
    return Templates.write(views.writing(TalkKind.NOTICE, NEW, Map.of()));
  }

  @POST
  @Path("new")
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response write(MultivaluedMap<String, String> sent) {
    SentForm reader = new SentForm(sent);
    try {
      UUID id = TalkForm.id(reader.text("id"));
      TalkPosting posting = TalkPosting.of(id, TalkForm.written(TalkKind.NOTICE, reader));
      TalkEntry entry = talk.post(current.get(), TalkKind.NOTICE, posting).entry();
      finder.show(entry);
      return Response.seeOther(URI.create(entry.path() + "?saved=yes")).build();
    } catch (EntryRefused e) {
      TalkViews.Writing again = views.writing(TalkKind.NOTICE, NEW, reader.values());
      again.form().remarks(e.remarks());
      page.fail();
      return Response.status(TalkViews.UNPROCESSABLE).entity(Templates.write(again)).build();
    }
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  public TemplateInstance notice(@RestPath UUID id, @RestQuery String saved) {
    if (saved != null) {
      page.say("Saved.");
    }
    Actor actor = current.get();
    TalkEntry entry = talk.get(actor, id);
    if (entry.kind() != TalkKind.NOTICE) {
      throw new EntryUnknown("notice");
    }
    opened.saw(List.of(id));
    return Templates.notice(views.entry(entry, actor));
  }
}

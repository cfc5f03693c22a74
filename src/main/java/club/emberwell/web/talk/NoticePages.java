package club.emberwell.web.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.talk.Markdown;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Opened;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.frame.SentForm;
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
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Notices: what members should know of. */
@Path("/notices")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class NoticePages extends Pages {
  private static final String NEW = "/notices/new";

  private final TalkService talk;
  private final TalkFinder finder;
  private final TalkViews views;
  private final Opened opened;

  NoticePages(TalkService talk, TalkFinder finder, TalkViews views, Opened opened) {
    this.talk = talk;
    this.finder = finder;
    this.views = views;
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
    Part at = Pager.part(number);
    String text = q == null ? "" : q.strip();
    page.preview(
        Shown.NOTICES.preview(
            text,
            at.page(),
            "What members should know: batches, machines and firmware that changed."));
    return Templates.notices(
        views.list(finder.find(EntryKind.NOTICE, text, false, at), text, Shown.NOTICES));
  }

  @GET
  @Path("new")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance write() {
    return writing(blank());
  }

  private static Form blank() {
    return TalkForm.of(EntryKind.NOTICE, UUID.randomUUID());
  }

  private TemplateInstance writing(Form form) {
    return Templates.write(views.writing(EntryKind.NOTICE, NEW, form));
  }

  @POST
  @Path("new")
  @RolesAllowed(Role.WRITE)
  public Response write(SentForm sent) {
    return take(sent, NoticePages::blank, this::writing)
        .store(this::post)
        .then(entry -> entry.path() + "?saved=yes");
  }

  private TalkEntry post(SentForm sent) {
    TalkPosting posting = TalkPosting.of(sent.id("id"), TalkForm.written(EntryKind.NOTICE, sent));
    TalkEntry entry = talk.post(actor(), EntryKind.NOTICE, posting).entry();
    finder.show(entry);
    return entry;
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  public TemplateInstance notice(@RestPath UUID id, @RestQuery String saved) {
    say(saved, "Saved.");
    Actor actor = actor();
    TalkEntry entry = talk.get(actor, id);
    if (entry.kind() != EntryKind.NOTICE) {
      throw new EntryUnknown("notice");
    }
    opened.saw(List.of(id));
    if (entry.isLive()) {
      page.preview(
          Preview.of(
              entry.path(),
              entry.memberHandle() + " tells: " + Markdown.plain(entry.written().text())));
    }
    return Templates.notice(views.entry(entry, actor));
  }
}

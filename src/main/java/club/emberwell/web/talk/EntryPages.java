package club.emberwell.web.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.TalkRevision;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.WrittenTalk;
import club.emberwell.web.frame.PageFrame;
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
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;

/** Changing an entry of any kind, its history, and taking it back. */
@Path("/talk/{id}")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class EntryPages {
  private final TalkService talk;
  private final TalkFinder finder;
  private final TalkViews views;
  private final CurrentActor current;
  private final PageFrame page;

  EntryPages(
      TalkService talk, TalkFinder finder, TalkViews views, CurrentActor current, PageFrame page) {
    this.talk = talk;
    this.finder = finder;
    this.views = views;
    this.current = current;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance edit(Edit edit);

    static native TemplateInstance history(EntryView entry, List<Step> steps);

    static native TemplateInstance withdraw(EntryView entry);
  }

  /**
   * An entry being changed.
   *
   * @param version the change is based on
   * @param meanwhile set where somebody else changed it: from what stands now to what was typed
   */
  record Edit(EntryView entry, TalkViews.Writing writing, int version, Changes meanwhile) {}

  /** A step of the history with what it changed. */
  record Step(TalkRevision revision, Changes changes) {}

  @GET
  @Path("edit")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance edit(@RestPath UUID id) {
    TalkEntry entry = talk.get(current.get(), id);
    return Templates.edit(
        new Edit(
            views.entry(entry, current.get()),
            views.editing(entry.kind(), id.toString(), views.values(entry)),
            entry.version(),
            null));
  }

  @POST
  @Path("edit")
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response edit(@RestPath UUID id, MultivaluedMap<String, String> sent) {
    SentForm reader = new SentForm(sent);
    Actor actor = current.get();
    TalkEntry entry = talk.get(actor, id);
    WrittenTalk written = TalkForm.written(entry.kind(), reader);
    int version = TalkForm.version(reader);
    try {
      TalkEntry revised = talk.revise(actor, id, version, written, reader.text(TalkForm.REASON));
      finder.show(revised);
      return Response.seeOther(URI.create(revised.path())).build();
    } catch (EntryRefused e) {
      Edit again = again(entry, reader, version, null);
      again.writing().form().remarks(e.remarks());
      return answer(TalkViews.UNPROCESSABLE, again);
    } catch (EntryChanged e) {
      TalkEntry now = talk.get(actor, id);
      Changes between = Changes.between(now.written(), read(actor, now.kind(), written));
      return answer(
          Response.Status.PRECONDITION_FAILED.getStatusCode(),
          again(now, reader, now.version(), between));
    }
  }

  /** As it would be stored, so that a label and its slug do not differ; else as typed. */
  private WrittenTalk read(Actor actor, TalkKind kind, WrittenTalk typed) {
    try {
      return talk.preview(actor, kind, typed);
    } catch (EntryRefused e) {
      return typed.text() == null ? new WrittenTalk(typed.title(), "", typed.ties()) : typed;
    }
  }

  private Edit again(TalkEntry entry, SentForm reader, int version, Changes meanwhile) {
    return new Edit(
        views.entry(entry, current.get()),
        views.editing(entry.kind(), entry.id().toString(), reader.values()),
        version,
        meanwhile);
  }

  private Response answer(int status, Edit again) {
    page.fail();
    return Response.status(status).entity(Templates.edit(again)).build();
  }

  @GET
  @Path("history")
  @RolesAllowed(Role.READ)
  public TemplateInstance history(@RestPath UUID id) {
    Actor actor = current.get();
    List<TalkRevision> revisions = talk.history(actor, id);
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < revisions.size(); i++) {
      TalkRevision before = revisions.get(Math.min(i + 1, revisions.size() - 1));
      steps.add(
          new Step(
              revisions.get(i), Changes.between(before.written(), revisions.get(i).written())));
    }
    return Templates.history(views.entry(talk.get(actor, id), actor), steps);
  }

  @GET
  @Path("withdraw")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance withdraw(@RestPath UUID id) {
    return Templates.withdraw(views.entry(talk.get(current.get(), id), current.get()));
  }

  @POST
  @Path("withdraw")
  @RolesAllowed(Role.WRITE)
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    TalkEntry entry = talk.get(current.get(), id);
    talk.withdraw(current.get(), id, version);
    finder.show(entry);
    return Response.seeOther(URI.create(entry.path())).build();
  }
}

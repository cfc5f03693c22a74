package club.emberwell.web.talk;

import club.emberwell.entry.Difference;
import club.emberwell.entry.Revision;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.talk.TalkDifference;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.WrittenTalk;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
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
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;

/** Changing an entry of any kind, its history, and taking it back. */
@Path("/talk/{id}")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class EntryPages extends Pages {
  private final TalkService talk;
  private final TalkFinder finder;
  private final TalkViews views;

  EntryPages(TalkService talk, TalkFinder finder, TalkViews views) {
    this.talk = talk;
    this.finder = finder;
    this.views = views;
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
   * @param lines from what stands now to what was typed, where somebody else changed it
   */
  record Edit(EntryView entry, TalkViews.Writing writing, List<Difference.Line> lines) {}

  /** A step of the history with what it changed. */
  record Step(Revision<WrittenTalk> revision, Changes changes) {}

  @GET
  @Path("edit")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance edit(@RestPath UUID id) {
    TalkEntry entry = talk.get(actor(), id);
    return editing(entry, views.editing(entry), List.of());
  }

  private TemplateInstance editing(TalkEntry entry, Form form, List<Difference.Line> lines) {
    return Templates.edit(
        new Edit(
            views.entry(entry, actor()),
            views.writing(entry.kind(), "/talk/" + entry.id() + "/edit", form),
            lines));
  }

  @POST
  @Path("edit")
  @RolesAllowed(Role.WRITE)
  public Response edit(@RestPath UUID id, SentForm sent) {
    Actor actor = actor();
    WrittenTalk written = TalkForm.written(talk.get(actor, id).kind(), sent);
    return take(
            sent,
            () -> views.editing(talk.get(actor, id)),
            form -> again(talk.get(actor, id), form))
        .store(
            s -> {
              TalkEntry revised =
                  talk.revise(actor, id, s.version(), written, s.text(TalkForm.REASON));
              finder.show(revised);
              return revised;
            })
        .then(TalkEntry::path);
  }

  private TemplateInstance again(TalkEntry now, Form form) {
    WrittenTalk stored = now.written();
    String text = form.field(TalkForm.TEXT).getValue();
    WrittenTalk typed = new WrittenTalk(stored.title(), text, stored.ties());
    return editing(
        now, form, form.isOvertaken() ? Changes.between(stored, typed).lines() : List.of());
  }

  @GET
  @Path("history")
  @RolesAllowed(Role.READ)
  public TemplateInstance history(@RestPath UUID id) {
    Actor actor = actor();
    List<Step> steps =
        Revision.steps(talk.history(actor, id), TalkDifference::between).stream()
            .map(step -> new Step(step.revision(), Changes.of(step.changes())))
            .toList();
    return Templates.history(views.entry(talk.get(actor, id), actor), steps);
  }

  @GET
  @Path("withdraw")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance withdraw(@RestPath UUID id) {
    return Templates.withdraw(views.entry(talk.get(actor(), id), actor()));
  }

  @POST
  @Path("withdraw")
  @RolesAllowed(Role.WRITE)
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    TalkEntry entry = talk.get(actor(), id);
    talk.withdraw(actor(), id, version);
    finder.show(entry);
    return to(entry.path());
  }
}

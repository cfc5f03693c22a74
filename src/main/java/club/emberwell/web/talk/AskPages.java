package club.emberwell.web.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.catalog.CatalogService;
import club.emberwell.catalog.TermKind;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.WrittenTalk;
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
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Ask: the questions, one question with its answers, and asking a new one. */
@Path("/ask")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class AskPages {
  private static final String NEW = "/ask/new";

  private final TalkService talk;
  private final TalkFinder finder;
  private final TalkViews views;
  private final Beforehand beforehand;
  private final CatalogService catalog;
  private final CurrentActor current;
  private final PageFrame page;
  private final Opened opened;

  AskPages(
      TalkService talk,
      TalkFinder finder,
      TalkViews views,
      Beforehand beforehand,
      CatalogService catalog,
      CurrentActor current,
      PageFrame page,
      Opened opened) {
    this.talk = talk;
    this.finder = finder;
    this.views = views;
    this.beforehand = beforehand;
    this.catalog = catalog;
    this.current = current;
    this.page = page;
    this.opened = opened;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance questions(TalkViews.Listing list);

    static native TemplateInstance ask(TalkViews.Writing writing, Beforehand.Known known);

    static native TemplateInstance similar(Beforehand.Known known);

    static native TemplateInstance question(TalkViews.Thread thread, TalkViews.Writing reply);
  }

  @GET
  @RolesAllowed(Role.READ)
  public TemplateInstance questions(
      @RestQuery String q, @RestQuery String show, @RestQuery("page") String number) {
    int at = Pager.number(number);
    String text = q == null ? "" : q.strip();
    Shown shown = Shown.UNANSWERED.code().equals(show) ? Shown.UNANSWERED : Shown.QUESTIONS;
    boolean unanswered = shown == Shown.UNANSWERED;
    return Templates.questions(
        text.isEmpty()
            ? views.list(talk.latest(TalkKind.QUESTION, unanswered, at), text, shown)
            : views.list(finder.find(TalkKind.QUESTION, text, unanswered, at), text, shown));
  }

  @GET
  @Path("new")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance ask(
      @RestQuery String about, @RestQuery String material, @RestQuery String report) {
    Map<String, String> values = new HashMap<>();
    if (about != null && !about.isBlank()) {
      boolean names = catalog.vocabulary().read(TermKind.MATERIAL, about).value().isPresent();
      values.put(names ? TalkForm.MATERIAL : TalkForm.TITLE, about.strip());
    }
    if (material != null) {
      values.put(TalkForm.MATERIAL, material);
    }
    if (report != null) {
      values.put(TalkForm.REPORT, report);
    }
    return Templates.ask(writing(values), null);
  }

  /** A fragment for the form: what is known of a title that is still being typed. */
  @GET
  @Path("similar")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance similar(
      @RestQuery String title,
      @RestQuery(TalkForm.MATERIAL) String material,
      @RestQuery(TalkForm.COATING) String coating) {
    return Templates.similar(beforehand.soFar(title, material, coating, current.get()));
  }

  /** Where a question about something is begun. */
  public static String about(String text) {
    return text.isEmpty() ? NEW : NEW + "?about=" + URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** Looks first what is known already; only the second press posts. */
  @POST
  @Path("new")
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response ask(MultivaluedMap<String, String> sent) {
    SentForm reader = new SentForm(sent);
    WrittenTalk written = TalkForm.written(TalkKind.QUESTION, reader);
    Actor actor = current.get();
    try {
      if (!"post".equals(reader.text("step"))) {
        WrittenTalk read = talk.preview(actor, TalkKind.QUESTION, written);
        return Response.ok(Templates.ask(writing(reader.values()), beforehand.of(read, actor)))
            .build();
      }
      UUID id = TalkForm.id(reader.text("id"));
      TalkEntry entry = talk.post(actor, TalkKind.QUESTION, TalkPosting.of(id, written)).entry();
      finder.show(entry);
      return to(entry.path() + "?saved=yes");
    } catch (EntryRefused e) {
      TalkViews.Writing again = writing(reader.values());
      again.form().remarks(e.remarks());
      return refused(Templates.ask(again, null));
    }
  }

  private TalkViews.Writing writing(Map<String, String> values) {
    return views.writing(TalkKind.QUESTION, NEW, values);
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  public TemplateInstance question(
      @RestPath UUID id,
      @RestQuery String saved,
      @RestQuery("page") String number,
      @RestQuery String answer) {
    if (saved != null) {
      page.say("Saved.");
    }
    Actor actor = current.get();
    UUID wanted = TalkForm.id(answer);
    TalkService.Thread thread =
        wanted == null
            ? talk.thread(actor, id, Pager.number(number))
            : talk.threadAt(actor, id, wanted);
    opened.saw(thread.ids());
    return Templates.question(views.thread(thread, actor), answering(id, Map.of()));
  }

  @POST
  @Path("{id}/answers")
  @RolesAllowed(Role.WRITE)
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response answer(@RestPath UUID id, MultivaluedMap<String, String> sent) {
    SentForm reader = new SentForm(sent);
    Actor actor = current.get();
    try {
      UUID own = TalkForm.id(reader.text("id"));
      TalkEntry entry =
          talk.answer(actor, id, TalkPosting.of(own, TalkForm.written(TalkKind.ANSWER, reader)))
              .entry();
      finder.show(entry);
      return to(entry.path());
    } catch (EntryRefused e) {
      TalkViews.Writing again = answering(id, reader.values());
      again.form().remarks(e.remarks());
      return refused(Templates.question(views.thread(talk.thread(actor, id, 0), actor), again));
    }
  }

  private TalkViews.Writing answering(UUID question, Map<String, String> values) {
    return views.writing(TalkKind.ANSWER, "/ask/" + question + "/answers", values);
  }

  /** An empty answer says that none helped after all. */
  @POST
  @Path("{id}/accept")
  @RolesAllowed(Role.WRITE)
  public Response accept(@RestPath UUID id, @RestForm String answer) {
    UUID helped = TalkForm.id(answer == null || answer.isBlank() ? null : answer);
    talk.accept(current.get(), id, helped, null);
    return to("/ask/" + id + (helped == null ? "" : "#answer-" + helped));
  }

  private Response refused(TemplateInstance again) {
    page.fail();
    return Response.status(TalkViews.UNPROCESSABLE).entity(again).build();
  }

  private static Response to(String path) {
    return Response.seeOther(URI.create(path)).build();
  }
}

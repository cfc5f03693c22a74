package club.emberwell.web.talk;

import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.EntryKind;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Remarks;
import club.emberwell.search.query.QueryString;
import club.emberwell.talk.Markdown;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.WrittenTalk;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.FormPage;
import club.emberwell.web.frame.Opened;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.Preview;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.photo.ChosenPhotos;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Ask: the questions, one question with its answers, and asking a new one. */
@Path("/ask")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class AskPages extends Pages {
  private static final String NEW = "/ask/new";

  private final TalkService talk;
  private final TalkFinder finder;
  private final TalkViews views;
  private final Beforehand beforehand;
  private final CatalogService catalog;
  private final ChosenPhotos photos;
  private final Opened opened;
  private final AskedReport asked;

  AskPages(
      TalkService talk,
      TalkFinder finder,
      TalkViews views,
      Beforehand beforehand,
      CatalogService catalog,
      Opened opened,
      AskedReport asked,
      ChosenPhotos photos) {
    this.talk = talk;
    this.finder = finder;
    this.views = views;
    this.beforehand = beforehand;
    this.catalog = catalog;
    this.photos = photos;
    this.opened = opened;
    this.asked = asked;
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
    Part at = Pager.part(number);
    String text = q == null ? "" : q.strip();
    Shown shown = Shown.UNANSWERED.code().equals(show) ? Shown.UNANSWERED : Shown.QUESTIONS;
    boolean unanswered = shown == Shown.UNANSWERED;
    page.preview(
        shown.preview(
            text, at.page(), "Questions of members about laser settings, materials and faults."));
    return Templates.questions(
        views.list(finder.find(EntryKind.QUESTION, text, unanswered, at), text, shown));
  }

  @GET
  @Path("new")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance ask(
      @RestQuery String about, @RestQuery String material, @RestQuery String report) {
    Form form = blank(null);
    if (about != null && !about.isBlank()) {
      boolean names = catalog.vocabulary().read(TermKind.MATERIAL, about).value().isPresent();
      form.field(names ? TalkForm.MATERIAL : TalkForm.TITLE).value(about.strip());
    }
    if (material != null) {
      form.field(TalkForm.MATERIAL).value(material);
    }
    UUID id = SentForm.readId(report);
    if (id != null) {
      form.fill(asked.values(id, actor()));
    }
    return Templates.ask(writing(form), null);
  }

  /** A fragment for the form: what is known of a title that is still being typed. */
  @GET
  @Path("similar")
  @RolesAllowed(Role.WRITE)
  public TemplateInstance similar(
      @RestQuery String title,
      @RestQuery(TalkForm.MATERIAL) String material,
      @RestQuery(TalkForm.COATING) String coating) {
    return Templates.similar(beforehand.soFar(title, material, coating, actor()));
  }

  /** Where a question about something is begun. */
  public static String about(String text) {
    return text.isEmpty() ? NEW : NEW + "?about=" + QueryString.encoded(text);
  }

  /** Looks first what is known already; only the second press posts. */
  @POST
  @Path("new")
  @RolesAllowed(Role.WRITE)
  public Uni<Response> ask(SentForm sent) {
    return photos.take(sent).map(wrong -> asked(sent, wrong));
  }

  private Response asked(SentForm sent, List<Remark> wrong) {
    Actor actor = actor();
    FormPage form = take(sent, () -> blank(sent), again -> Templates.ask(writing(again), null));
    WrittenTalk written = TalkForm.written(EntryKind.QUESTION, sent);
    if (!"post".equals(sent.text("step"))) {
      return form.store(
              s -> {
                Remarks.refuse(wrong);
                return talk.preview(actor, EntryKind.QUESTION, written);
              })
          .show((typed, read) -> Templates.ask(writing(typed), beforehand.of(read, actor)));
    }
    TalkPosting posting = TalkPosting.of(sent.id("id"), written);
    return form.store(s -> stored(s, wrong, () -> talk.post(actor, EntryKind.QUESTION, posting)))
        .then(entry -> entry.path() + "?saved=yes");
  }

  private Form blank(SentForm sent) {
    return photos.into(TalkForm.of(EntryKind.QUESTION, UUID.randomUUID()), sent);
  }

  private TalkViews.Writing writing(Form form) {
    return views.writing(EntryKind.QUESTION, NEW, form);
  }

  /** The entry with its photos, once everybody can find it. */
  private TalkEntry stored(
      SentForm sent, List<Remark> ofPhotos, Supplier<TalkService.Posted> deed) {
    Remarks.refuse(ofPhotos);
    TalkEntry entry =
        photos.store(
            sent,
            () -> deed.get().entry(),
            made -> new ChosenPhotos.Made(made.id(), made.createdAt()));
    finder.show(entry);
    return entry;
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  public TemplateInstance question(
      @RestPath UUID id,
      @RestQuery String saved,
      @RestQuery("page") String number,
      @RestQuery String answer) {
    say(saved, "Saved.");
    Actor actor = actor();
    UUID wanted = SentForm.readId(answer);
    TalkService.Thread thread =
        wanted == null
            ? talk.thread(actor, id, Pager.part(number))
            : talk.threadAt(actor, id, wanted);
    opened.saw(thread.ids());
    preview(thread);
    return Templates.question(views.thread(thread, actor), answering(id, blankAnswer(null)));
  }

  private void preview(TalkService.Thread thread) {
    TalkEntry question = thread.question();
    if (question.isLive()) {
      String answers = question.answers() == 1 ? "1 answer" : question.answers() + " answers";
      page.preview(
          Preview.of(
                  question.path(),
                  answers
                      + ". "
                      + question.memberHandle()
                      + " asks: "
                      + Markdown.plain(question.written().text()))
              .withDrawn("/preview" + question.path() + ".png")
              .listedIf(thread.answers().page() == 0));
    }
  }

  @POST
  @Path("{id}/answers")
  @RolesAllowed(Role.WRITE)
  public Uni<Response> answer(@RestPath UUID id, SentForm sent) {
    return photos.take(sent).map(wrong -> answered(id, sent, wrong));
  }

  private Response answered(UUID id, SentForm sent, List<Remark> wrong) {
    Actor actor = actor();
    return take(
            sent,
            () -> blankAnswer(sent),
            form ->
                Templates.question(
                    views.thread(talk.thread(actor, id, Part.FIRST), actor), answering(id, form)))
        .store(
            s ->
                stored(
                    s,
                    wrong,
                    () ->
                        talk.answer(
                            actor,
                            id,
                            TalkPosting.of(s.id("id"), TalkForm.written(EntryKind.ANSWER, s)))))
        .then(TalkEntry::path);
  }

  private Form blankAnswer(SentForm sent) {
    return photos.into(TalkForm.of(EntryKind.ANSWER, UUID.randomUUID()), sent);
  }

  private TalkViews.Writing answering(UUID question, Form form) {
    return views.writing(EntryKind.ANSWER, "/ask/" + question + "/answers", form);
  }
}

package club.emberwell.web.report;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.Posting;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.photo.ChosenPhotos;
import club.emberwell.web.report.PostEntry.Kind;
import club.emberwell.web.report.PostEntry.Purpose;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Uni;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Post a result: a form that loses nothing and asks before it stores what looks implausible. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class PostPages extends Pages {
  private static final String FROM = "from";
  private static final Purpose POST = new Purpose("Post a result", "/post", Kind.FIRST);
  private static final Purpose AGAIN = new Purpose("Post a result", "/post", Kind.AGAIN);
  private static final Purpose NEXT = new Purpose("Post the next result", "/post", Kind.NEXT);

  private final ReportService reports;
  private final LastReport last;
  private final LikelyMachine likely;
  private final PostedRecipe recipe;
  private final Machines machines;
  private final Words words;
  private final SearchIndex index;
  private final ChosenPhotos photos;

  PostPages(
      ReportService reports,
      LastReport last,
      LikelyMachine likely,
      PostedRecipe recipe,
      Machines machines,
      Words words,
      SearchIndex index,
      ChosenPhotos photos) {
    this.reports = reports;
    this.last = last;
    this.likely = likely;
    this.recipe = recipe;
    this.machines = machines;
    this.words = words;
    this.index = index;
    this.photos = photos;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance post(PostEntry entry);
  }

  private TemplateInstance shown(Purpose purpose, Form form) {
    return Templates.post(
        new PostEntry(purpose, UnitFields.follow(form), words.lists(), machines.of(actor())));
  }

  private Form blank() {
    Actor actor = actor();
    return UnitFields.add(ReportForm.of(machines.of(actor)), actor.units()).atField();
  }

  /** For a report that is to be posted, whose id makes it one however often it is sent. */
  private Form fresh(SentForm sent) {
    return photos.into(ReportForm.withId(blank(), UUID.randomUUID()), sent);
  }

  /**
   * @param uri may name fields with what stands in them, as the settings of an answer do; then
   *     nothing is taken from the last report; or a recipe, whose result it is
   * @param from the report whose next one it is; without it the last that was posted
   */
  @GET
  @Path("post")
  public TemplateInstance post(@Context UriInfo uri, @RestQuery String from) {
    Map<String, String> given = new LinkedHashMap<>();
    uri.getQueryParameters().forEach((name, values) -> given.put(name, values.get(0)));
    given.remove(FROM);
    UUID by = SentForm.readId(given.get(ReportForm.RECIPE));
    if (by != null) {
      return shown(NEXT, UnitFields.part(fresh(null).fill(recipe.values(actor(), by))));
    }
    if (!given.isEmpty()) {
      return shown(POST, UnitFields.part(fresh(null).fill(given)));
    }
    UUID before = SentForm.readId(from);
    return (before == null ? last.of(actor()) : Optional.of(reports.get(actor(), before)))
        .map(
            report ->
                shown(
                    before == null ? AGAIN : NEXT,
                    UnitFields.part(fresh(null).fill(ReportFormValues.likely(report)))))
        .orElseGet(() -> shown(POST, fresh(null)));
  }

  @POST
  @Path("post")
  public Uni<Response> post(SentForm sent) {
    UUID by = sent.id(ReportForm.RECIPE);
    return store(
        sent,
        POST,
        () -> fresh(sent),
        null,
        w -> by == null ? reports.post(actor(), w) : recipe.post(actor(), by, w));
  }

  /**
   * @param trial which of a grid was tried, 0 = the first
   */
  @GET
  @Path("reports/{id}/repeat")
  public TemplateInstance repeat(@RestPath UUID id, @RestQuery Integer trial) {
    return shown(repeating(id), repeated(id, trial == null ? 0 : trial, null));
  }

  private static Purpose repeating(UUID id) {
    return new Purpose("I tried this", "/reports/" + id + "/repeat", Kind.REPEAT);
  }

  /** The settings of a trial with the machine that the member used last for such work. */
  private Form repeated(UUID id, int trial, SentForm sent) {
    Actor actor = actor();
    StoredReport original = reports.get(actor, id);
    List<Machine> own = machines.of(actor);
    Form form = UnitFields.part(fresh(sent).fill(ReportFormValues.repeated(original, trial)));
    likely
        .of(actor, own, original.snapshot().laser().source())
        .ifPresent(machine -> form.field("machine").value(machine.toString()));
    return form;
  }

  @POST
  @Path("reports/{id}/repeat")
  public Uni<Response> repeat(@RestPath UUID id, SentForm sent) {
    return store(
        sent, repeating(id), () -> repeated(id, 0, sent), id, w -> reports.repeat(actor(), id, w));
  }

  @GET
  @Path("reports/{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return shown(editing(id), form(id));
  }

  private static Purpose editing(UUID id) {
    return new Purpose("Edit your report", "/reports/" + id + "/edit", Kind.EDIT);
  }

  private Form form(UUID id) {
    StoredReport report = reports.get(actor(), id);
    Form empty =
        isGrid(report)
            ? UnitFields.add(ReportForm.ofGrid(machines.of(actor())), actor().units())
            : blank();
    return UnitFields.part(
        empty
            .changing("report", report.snapshot().version(), "/reports/" + id)
            .fill(ReportFormValues.all(report)));
  }

  @POST
  @Path("reports/{id}/edit")
  public Uni<Response> edit(@RestPath UUID id, SentForm sent) {
    return store(
        sent,
        editing(id),
        () -> form(id),
        null,
        w -> reports.revise(actor(), id, sent.version(), keepingTests(id, w), null));
  }

  private static boolean isGrid(StoredReport report) {
    return report.written().trials().size() > 1;
  }

  private Posting keepingTests(UUID id, Posting posting) {
    StoredReport report = reports.get(actor(), id);
    return isGrid(report)
        ? posting.with(posting.written().trying(report.written().trials()))
        : posting;
  }

  private Uni<Response> store(
      SentForm sent,
      Purpose purpose,
      Supplier<Form> form,
      UUID repeatOf,
      Function<Posting, StoredReport> deed) {
    return photos
        .take(sent)
        .map(
            wrong ->
                take(sent, form, again -> shown(purpose, again))
                    .store(
                        s ->
                            photos.store(
                                s, () -> deed.apply(read(s, repeatOf, wrong)), PostPages::made))
                    .then(stored -> there(stored, purpose)));
  }

  /** Where it stands, once everybody can find it. */
  private String there(StoredReport stored, Purpose purpose) {
    UUID id = stored.snapshot().id();
    index.awaitSeen(id);
    String done = purpose.kind() == Kind.EDIT ? ReportPages.EDITED : "yes";
    return "/reports/" + id + "?saved=" + done;
  }

  private static ChosenPhotos.Made made(StoredReport stored) {
    return new ChosenPhotos.Made(stored.snapshot().id(), stored.snapshot().createdAt());
  }

  private Posting read(SentForm sent, UUID repeatOf, List<Remark> ofPhotos) {
    Actor actor = actor();
    WrittenReport written = ReportFormReader.written(sent, repeatOf, actor.units().style());
    List<Remark> told = new ArrayList<>(sent.remarks());
    told.addAll(ofPhotos);
    if (told.isEmpty()) {
      return Posting.ofPage(sent.id(ReportForm.ID), written, actor.units().style());
    }
    if (repeatOf == null) {
      told.addAll(others(actor, written, told));
    }
    throw new EntryRefused(told);
  }

  /** What else is wrong, so that one look at the form corrects all of it. */
  private List<Remark> others(Actor actor, WrittenReport written, List<Remark> told) {
    try {
      reports.preview(actor, written, actor.units().style());
      return List.of();
    } catch (EntryRefused e) {
      return e.remarks().stream()
          .filter(r -> told.stream().noneMatch(t -> t.field().equals(r.field())))
          .toList();
    } catch (ProhibitedWork e) {
      return List.of(Remark.error(RemarkId.PROHIBITED, "/material", e.ban().sentence()));
    }
  }
}

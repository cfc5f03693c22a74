package club.emberwell.web.report;

import club.emberwell.access.CurrentActor;
import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.EntryUnconfirmed;
import club.emberwell.report.FieldChange;
import club.emberwell.report.Posting;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.WrittenDifference;
import club.emberwell.report.WrittenReport;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.web.frame.Form;
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
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/** Post a result: a form that loses nothing and asks before it stores what looks implausible. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class PostPages {
  private static final int UNPROCESSABLE = 422;

  private final ReportService reports;
  private final LastReport last;
  private final Machines machines;
  private final Words words;
  private final SearchIndex index;
  private final CurrentActor current;
  private final PageFrame page;

  PostPages(
      ReportService reports,
      LastReport last,
      Machines machines,
      Words words,
      SearchIndex index,
      CurrentActor current,
      PageFrame page) {
    this.reports = reports;
    this.last = last;
    this.machines = machines;
    this.words = words;
    this.index = index;
    this.current = current;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance post(Entry entry);
  }

  /**
   * What somebody else made of the report while it was being edited.
   *
   * @param href where it is read
   * @param changes from what stands now to what was sent
   */
  record Meanwhile(String href, List<FieldChange> changes) {}

  /**
   * The form in one state.
   *
   * @param action where it is sent to
   * @param doubts warnings to confirm before it is stored as it is
   * @param ban why nothing about this work is stored, or null
   * @param version of the report being edited, or null for a new one
   * @param meanwhile set where somebody changed the report meanwhile
   */
  record Entry(
      String heading,
      String action,
      Form form,
      List<Machine> machines,
      List<Remark> doubts,
      String ban,
      Integer version,
      Meanwhile meanwhile,
      Words.Lists words) {
    private static final List<String> MORE =
        List.of(
            "settings.repetitionRate",
            "settings.pulseDuration",
            "settings.focusOffset",
            "settings.airAssist",
            "settings.direction",
            "settings.crossPass",
            "thickness");
    private static final List<String> WORDS =
        List.of("defects", "notes", "lot", "controllerVersion");

    /** What has something to correct stands open. */
    public boolean isMoreOpen() {
      return toCorrect(MORE);
    }

    public boolean isWordsOpen() {
      return toCorrect(WORDS);
    }

    /** How many of the folded settings hold something, so that none is sent unnoticed. */
    public long getMoreFilled() {
      return MORE.stream().filter(name -> !form.field(name).getValue().isEmpty()).count();
    }

    private boolean toCorrect(List<String> names) {
      return names.stream().map(form::field).anyMatch(f -> f.isFailed() || f.isWarned());
    }
  }

  @GET
  @Path("post")
  public TemplateInstance post() {
    Actor actor = current.get();
    Map<String, String> likely = last.of(actor).map(ReportFormValues::likely).orElse(Map.of());
    return Templates.post(entry("Post a result", "/post", likely, List.of()));
  }

  @POST
  @Path("post")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response post(MultivaluedMap<String, String> sent) {
    return store(sent, "Post a result", "/post", null, null);
  }

  @GET
  @Path("reports/{id}/repeat")
  public TemplateInstance repeat(@RestPath UUID id) {
    StoredReport original = reports.get(current.get(), id);
    Map<String, String> likely = ReportFormValues.likely(original.written());
    likely.remove("machine");
    return Templates.post(entry("Tried it too", "/reports/" + id + "/repeat", likely, List.of()));
  }

  @POST
  @Path("reports/{id}/repeat")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response repeat(@RestPath UUID id, MultivaluedMap<String, String> sent) {
    return store(sent, "Tried it too", "/reports/" + id + "/repeat", id, null);
  }

  @GET
  @Path("reports/{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    StoredReport report = reports.get(current.get(), id);
    Entry entry =
        entry(
            "Change your report",
            "/reports/" + id + "/edit",
            ReportFormValues.all(report.written()),
            List.of());
    return Templates.post(versioned(entry, report.snapshot().version(), null));
  }

  @POST
  @Path("reports/{id}/edit")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response edit(@RestPath UUID id, MultivaluedMap<String, String> sent) {
    return store(sent, "Change your report", "/reports/" + id + "/edit", null, id);
  }

  private Response store(
      MultivaluedMap<String, String> sent,
      String heading,
      String action,
      UUID repeatOf,
      UUID edited) {
    SentForm reader = new SentForm(sent);
    WrittenReport written = ReportFormReader.written(reader, repeatOf);
    Integer version = version(sent);
    Entry again =
        versioned(entry(heading, action, reader.values(), reader.remarks()), version, null);
    if (reader.onlyAsked()) {
      return Response.ok(Templates.post(again)).build();
    }
    Actor actor = current.get();
    if (!reader.remarks().isEmpty()) {
      again.form().remarks(repeatOf == null ? others(actor, written, reader.remarks()) : List.of());
      return refused(again);
    }
    Posting posting = Posting.ofPage(written, actor.units().style());
    try {
      StoredReport stored = stored(actor, posting, repeatOf, edited, version);
      index.awaitSeen(stored.snapshot().id());
      return Response.seeOther(URI.create("/reports/" + stored.snapshot().id() + "?saved")).build();
    } catch (EntryRefused e) {
      return refused(with(again, e.remarks(), List.of(), null));
    } catch (EntryUnconfirmed e) {
      return refused(with(again, e.warnings(), e.warnings(), null));
    } catch (ProhibitedWork e) {
      return refused(
          with(
              again,
              List.of(Remark.error(RemarkId.PROHIBITED, "/material", e.ban().sentence())),
              List.of(),
              e.ban().sentence()));
    } catch (EntryChanged e) {
      StoredReport now = reports.get(actor, edited);
      Meanwhile both =
          new Meanwhile(
              "/reports/" + edited, WrittenDifference.between(now.written(), posting.written()));
      return Response.status(Response.Status.PRECONDITION_FAILED)
          .entity(Templates.post(versioned(again, now.snapshot().version(), both)))
          .build();
    }
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

  private StoredReport stored(
      Actor actor, Posting posting, UUID repeatOf, UUID edited, Integer version) {
    if (edited != null) {
      return reports.revise(actor, edited, version == null ? -1 : version, posting, null);
    }
    return repeatOf == null
        ? reports.post(actor, posting)
        : reports.repeat(actor, repeatOf, posting);
  }

  private Response refused(Entry entry) {
    page.fail();
    return Response.status(UNPROCESSABLE).entity(Templates.post(entry)).build();
  }

  private Entry entry(
      String heading, String action, Map<String, String> values, List<Remark> remarks) {
    List<Machine> own = machines.of(current.get());
    Form form = ReportForm.of(values, own).remarks(remarks);
    if (own.size() == 1 && form.field("machine").getValue().isEmpty()) {
      form.field("machine").value(own.get(0).id().toString());
    }
    return new Entry(heading, action, form, own, List.of(), null, null, null, words.lists());
  }

  private static Entry with(Entry e, List<Remark> remarks, List<Remark> doubts, String ban) {
    e.form().remarks(remarks);
    return new Entry(
        e.heading(),
        e.action(),
        e.form(),
        e.machines(),
        doubts,
        ban,
        e.version(),
        e.meanwhile(),
        e.words());
  }

  private static Entry versioned(Entry e, Integer version, Meanwhile meanwhile) {
    return new Entry(
        e.heading(),
        e.action(),
        e.form(),
        e.machines(),
        e.doubts(),
        e.ban(),
        version,
        meanwhile,
        e.words());
  }

  private static Integer version(MultivaluedMap<String, String> sent) {
    String text = sent.getFirst("version");
    return text != null && text.matches("\\d{1,9}") ? Integer.valueOf(text) : null;
  }
}

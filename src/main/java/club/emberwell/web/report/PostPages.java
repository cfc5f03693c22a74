package club.emberwell.web.report;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingForm;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.Posting;
import club.emberwell.report.ProhibitedWork;
import club.emberwell.report.ReportBriefs;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WorkForm;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenReport;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.web.frame.Field;
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
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Post a result: a form that loses nothing and asks before it stores what looks implausible. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class PostPages extends Pages {
  private static final Purpose POST = new Purpose("Post a result", "/post", false);

  private final ReportService reports;
  private final LastReport last;
  private final ReportBriefs briefs;
  private final Machines machines;
  private final Words words;
  private final SearchIndex index;

  PostPages(
      ReportService reports,
      LastReport last,
      ReportBriefs briefs,
      Machines machines,
      Words words,
      SearchIndex index) {
    this.reports = reports;
    this.last = last;
    this.briefs = briefs;
    this.machines = machines;
    this.words = words;
    this.index = index;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance post(Entry entry);
  }

  /**
   * What the form is for, and where it is sent to.
   *
   * @param repeat whether all but the result is known: that comes first then
   */
  record Purpose(String heading, String action, boolean repeat) {}

  /** The form in one state. */
  record Entry(Purpose purpose, Form form, Words.Lists words) {
    /** Whether it is about many tests, which it leaves as they are. */
    public boolean isGrid() {
      return form.find("effect").isEmpty();
    }

    /** What has something to correct stands open. */
    public boolean isMoreOpen() {
      return toCorrect(fields(SettingForm.Group.MORE));
    }

    public boolean isWordsOpen() {
      return toCorrect(
          Stream.of(form.find("defects").stream().toList(), getNotes(), getBeside())
              .flatMap(List::stream)
              .toList());
    }

    /** How many of the folded settings hold something, so that none is sent unnoticed. */
    public long getMoreFilled() {
      return fields(SettingForm.Group.MORE).stream()
          .filter(field -> !field.getValue().isEmpty())
          .count();
    }

    /** The settings that everybody sets. */
    public List<Field> getMain() {
      return fields(SettingForm.Group.MAIN);
    }

    /** The folded settings that are typed. */
    public List<Field> getMoreTyped() {
      return fields(SettingForm.Group.MORE).stream().filter(f -> f.getOptions().isEmpty()).toList();
    }

    /** The folded settings that are chosen. */
    public List<Field> getMoreChosen() {
      return fields(SettingForm.Group.MORE).stream()
          .filter(f -> !f.getOptions().isEmpty())
          .toList();
    }

    public List<Field> getPiece() {
      return fields(WorkForm.Group.PIECE);
    }

    public List<Field> getFinish() {
      return fields(WorkForm.Group.FINISH);
    }

    public List<Field> getOfProcess() {
      return fields(WorkForm.Group.OF_PROCESS);
    }

    public List<Field> getNotes() {
      return fields(WorkForm.Group.NOTES);
    }

    public List<Field> getBeside() {
      return fields(WorkForm.Group.BESIDE);
    }

    private List<Field> fields(WorkForm.Group group) {
      return Stream.of(WorkProperty.values())
          .filter(property -> property.form().group() == group)
          .map(property -> form.field(property.code()))
          .toList();
    }

    private List<Field> fields(SettingForm.Group group) {
      return Setting.of(group).stream().map(SettingFields::name).map(form::field).toList();
    }

    private static boolean toCorrect(List<Field> fields) {
      return fields.stream().anyMatch(f -> f.isFailed() || f.isWarned());
    }
  }

  private TemplateInstance shown(Purpose purpose, Form form) {
    return Templates.post(new Entry(purpose, form, words.lists()));
  }

  private Form blank() {
    return ReportForm.of(machines.of(actor()));
  }

  /** For a report that is to be posted, whose id makes it one however often it is sent. */
  private Form fresh() {
    return ReportForm.withId(blank(), UUID.randomUUID());
  }

  /**
   * @param uri may name fields with what stands in them, as the settings of an answer do; then
   *     nothing is taken from the last report
   */
  @GET
  @Path("post")
  public TemplateInstance post(@Context UriInfo uri) {
    Map<String, String> given = new LinkedHashMap<>();
    uri.getQueryParameters().forEach((name, values) -> given.put(name, values.get(0)));
    return shown(
        POST,
        fresh()
            .fill(
                given.isEmpty()
                    ? last.of(actor()).map(ReportFormValues::likely).orElse(Map.of())
                    : given));
  }

  @POST
  @Path("post")
  public Response post(SentForm sent) {
    return store(sent, POST, this::fresh, null, w -> reports.post(actor(), w));
  }

  /**
   * @param trial which of a grid was tried, 0 = the first
   */
  @GET
  @Path("reports/{id}/repeat")
  public TemplateInstance repeat(@RestPath UUID id, @RestQuery Integer trial) {
    return shown(repeating(id), repeated(id, trial == null ? 0 : trial));
  }

  private static Purpose repeating(UUID id) {
    return new Purpose("I tried this", "/reports/" + id + "/repeat", true);
  }

  /** The settings of a trial with the machine that the member used last for such work. */
  private Form repeated(UUID id, int trial) {
    Actor actor = actor();
    StoredReport original = reports.get(actor, id);
    List<Machine> own = machines.of(actor);
    Form form = fresh().fill(ReportFormValues.repeated(original, trial));
    likely(own, original).ifPresent(machine -> form.field("machine").value(machine.toString()));
    return form;
  }

  private Optional<UUID> likely(List<Machine> own, StoredReport original) {
    LaserSource source = original.snapshot().laser().source();
    List<UUID> alike =
        own.stream().filter(m -> m.laser().source() == source).map(Machine::id).toList();
    return alike.size() < 2
        ? alike.stream().findFirst()
        : Stream.concat(briefs.used(actor().memberId()).machines().stream(), alike.stream())
            .filter(alike::contains)
            .findFirst();
  }

  @POST
  @Path("reports/{id}/repeat")
  public Response repeat(@RestPath UUID id, SentForm sent) {
    return store(
        sent, repeating(id), () -> repeated(id, 0), id, w -> reports.repeat(actor(), id, w));
  }

  @GET
  @Path("reports/{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return shown(editing(id), form(id));
  }

  private static Purpose editing(UUID id) {
    return new Purpose("Edit your report", "/reports/" + id + "/edit", false);
  }

  private Form form(UUID id) {
    StoredReport report = reports.get(actor(), id);
    Form empty = isGrid(report) ? ReportForm.ofGrid(machines.of(actor())) : blank();
    return empty
        .changing("report", report.snapshot().version(), "/reports/" + id)
        .fill(ReportFormValues.all(report));
  }

  @POST
  @Path("reports/{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
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

  private Response store(
      SentForm sent,
      Purpose purpose,
      Supplier<Form> form,
      UUID repeatOf,
      Function<Posting, StoredReport> deed) {
    return take(sent, form, again -> shown(purpose, again))
        .store(s -> deed.apply(read(s, repeatOf)))
        .then(
            stored -> {
              UUID id = stored.snapshot().id();
              index.awaitSeen(id);
              return "/reports/" + id + "?saved";
            });
  }

  private Posting read(SentForm sent, UUID repeatOf) {
    Actor actor = actor();
    WrittenReport written = ReportFormReader.written(sent, repeatOf);
    List<Remark> told = new ArrayList<>(sent.remarks());
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

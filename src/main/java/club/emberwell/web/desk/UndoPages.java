package club.emberwell.web.desk;

import club.emberwell.desk.DeskConfig;
import club.emberwell.desk.DeskTimes;
import club.emberwell.desk.home.People;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.undo.UndoPlan;
import club.emberwell.desk.undo.UndoRun;
import club.emberwell.desk.undo.Undos;
import club.emberwell.desk.undo.Undos.Wanted;
import club.emberwell.listing.Part;
import club.emberwell.member.Role;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Undoing what a member or a rule did: choose, look, confirm, and take back. */
@Path("/desk/undos")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class UndoPages extends Pages {
  private static final String PATH = "/desk/undos/";

  private static final Map<String, String> SINCE = new LinkedHashMap<>();

  static {
    SINCE.put(DeskTimes.TODAY, "Today");
    SINCE.put(DeskTimes.WEEK, "This week");
    SINCE.put(DeskTimes.EVERYTHING, "Everything");
  }

  private final Undos undos;
  private final People people;
  private final DeskConfig config;

  UndoPages(Undos undos, People people, DeskConfig config) {
    this.undos = undos;
    this.people = people;
    this.config = config;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance undos(Listing<UndoRun> list);

    static native TemplateInstance plan(Plan plan);

    static native TemplateInstance run(UndoRun run);
  }

  /**
   * Choosing and confirming.
   *
   * @param found what would be done, null until something was chosen
   * @param id of the undo, made with the preview
   */
  record Plan(
      Form form, UUID member, String handle, String since, UndoPlan found, UUID id, Form confirm) {}

  @GET
  public TemplateInstance all(@RestQuery Integer page) {
    return Templates.undos(
        Listing.of(
            "Undone", "Nothing has been undone yet.", undos.all(actor(), Part.page(page)), PATH));
  }

  @GET
  @Path("new")
  public Response plan(
      @RestQuery UUID member,
      @RestQuery String rule,
      @RestQuery String since,
      @RestQuery String at,
      @RestQuery String zone) {
    if (since == null && at == null) {
      Form form = form(rule, DeskTimes.TODAY, "");
      return Response.ok(shown(form, member, rule, null, null, confirm())).build();
    }
    boolean typed = at != null && !at.isBlank();
    ZoneId here = DeskTimes.zone(zone).orElse(config.timeZone());
    return press(
            () -> form(rule, since, at), form -> shown(form, member, rule, since, null, confirm()))
        .store(
            s -> {
              Instant from = DeskTimes.read(typed ? "/at" : "/since", typed ? at : since, here);
              return undos.preview(actor(), wanted(member, rule, from));
            })
        .show(
            (form, found) -> shown(form, member, rule, found.since().toString(), found, confirm()));
  }

  private TemplateInstance shown(
      Form form, UUID member, String rule, String since, UndoPlan found, Form confirm) {
    String handle = member == null ? null : people.one(actor(), member).handle();
    return Templates.plan(new Plan(form, member, handle, since, found, UUID.randomUUID(), confirm));
  }

  private static Wanted wanted(UUID member, String rule, Instant since) {
    String only = rule == null || rule.isEmpty() ? null : rule;
    return new Wanted(member, only, since);
  }

  /**
   * @param since a word, or a time as addresses have it
   * @param at a time as somebody typed it
   */
  private static Form form(String rule, String since, String at) {
    boolean word = since != null && SINCE.containsKey(since);
    List<RuleCode> rules =
        Stream.of(RuleCode.values()).filter(r -> r != RuleCode.FIRST_LOOK).toList();
    return new Form()
        .add(
            Field.of("rule", "Rule")
                .choices(rules, RuleCode::code, RuleCode::label)
                .value(rule)
                .required())
        .add(
            Field.of("since", "Since")
                .choices(SINCE.keySet(), code -> code, SINCE::get)
                .value(word ? since : ""))
        .add(
            Field.of("at", "Or since a time (optional)")
                .hint("Like 2026-11-25 or 2026-11-25T10:30, in your time zone.")
                .value(at != null && !at.isBlank() ? at : word || since == null ? "" : since));
  }

  private static Form confirm() {
    return DeskForms.because("The members concerned read this.");
  }

  @POST
  public Response start(SentForm sent) {
    UUID id = sent.id("id");
    UUID member = sent.id("member");
    String rule = sent.typed("rule");
    String since = sent.typed("since");
    Wanted wanted = wanted(member, rule, DeskTimes.read("/since", since));
    return take(
            sent,
            UndoPages::confirm,
            form ->
                shown(
                    form(rule, since, ""),
                    member,
                    rule,
                    since,
                    undos.preview(actor(), wanted),
                    form))
        .run(s -> undos.start(actor(), id, wanted, s.typed("reason")))
        .then(PATH + id);
  }

  @GET
  @Path("{id}")
  public TemplateInstance run(@RestPath UUID id) {
    return Templates.run(undos.one(actor(), id));
  }

  @POST
  @Path("{id}/restore")
  public Response restore(@RestPath UUID id) {
    undos.restore(actor(), id);
    return to(PATH + id);
  }
}

package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.desk.DeskTimes;
import club.emberwell.desk.People;
import club.emberwell.desk.RuleCode;
import club.emberwell.desk.UndoPlan;
import club.emberwell.desk.UndoRun;
import club.emberwell.desk.Undos;
import club.emberwell.desk.Undos.Wanted;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
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
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Undoing what a member or a rule did: choose, look, confirm, and take back. */
@Path("/desk/undos")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class UndoPages {
  private static final String PATH = "/desk/undos/";

  private final Undos undos;
  private final People people;
  private final CurrentActor current;
  private final DeskForms forms;
  private final PageFrame page;

  UndoPages(Undos undos, People people, CurrentActor current, DeskForms forms, PageFrame page) {
    this.undos = undos;
    this.people = people;
    this.current = current;
    this.forms = forms;
    this.page = page;
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
        Listing.of("Undone", "Nothing was undone yet.", undos.all(current.get(), page), PATH));
  }

  @GET
  @Path("new")
  public Response plan(@RestQuery UUID member, @RestQuery String rule, @RestQuery String since) {
    Form form = form(rule, since == null ? yesterday() : since);
    if (since == null) {
      return Response.ok(shown(form, member, rule, since, null, confirm(""))).build();
    }
    try {
      UndoPlan found = undos.preview(current.get(), wanted(member, rule, since));
      return Response.ok(shown(form, member, rule, since, found, confirm(""))).build();
    } catch (EntryRefused e) {
      page.fail();
      form.remarks(e.remarks());
      return Response.status(422)
          .entity(shown(form, member, rule, since, null, confirm("")))
          .build();
    }
  }

  private static String yesterday() {
    return Instant.now()
        .minus(1, ChronoUnit.DAYS)
        .truncatedTo(ChronoUnit.MINUTES)
        .toString()
        .replace(":00Z", "");
  }

  private TemplateInstance shown(
      Form form, UUID member, String rule, String since, UndoPlan found, Form confirm) {
    String handle = member == null ? null : people.one(current.get(), member).handle();
    return Templates.plan(new Plan(form, member, handle, since, found, UUID.randomUUID(), confirm));
  }

  private static Wanted wanted(UUID member, String rule, String since) {
    String only = rule == null || rule.isEmpty() ? null : rule;
    return new Wanted(member, only, DeskTimes.read("/since", since));
  }

  private static Form form(String rule, String since) {
    List<Option> rules =
        Stream.of(RuleCode.values())
            .filter(r -> r != RuleCode.FIRST_LOOK)
            .map(r -> new Option(r.code(), r.label(), false))
            .toList();
    return new Form()
        .add(Field.of("rule", "Which rule").options(rules).value(rule).required())
        .add(
            Field.of("since", "Since when")
                .hint("Like 2026-11-25 or 2026-11-25T10:30, in UTC.")
                .value(since)
                .required());
  }

  private static Form confirm(String reason) {
    return new Form().add(DeskForms.reason(reason, "Everybody concerned reads this."));
  }

  @POST
  public Response start(
      @RestForm UUID id,
      @RestForm UUID member,
      @RestForm String rule,
      @RestForm String since,
      @RestForm String reason) {
    Wanted wanted = wanted(member, rule, since);
    return forms.send(
        () -> undos.start(current.get(), id, wanted, reason),
        PATH + id,
        confirm(reason),
        form ->
            shown(
                form(rule, since),
                member,
                rule,
                since,
                undos.preview(current.get(), wanted),
                form));
  }

  @GET
  @Path("{id}")
  public TemplateInstance run(@RestPath UUID id) {
    return Templates.run(undos.one(current.get(), id));
  }

  @POST
  @Path("{id}/restore")
  public Response restore(@RestPath UUID id) {
    undos.restore(current.get(), id);
    return DeskForms.to(PATH + id);
  }
}

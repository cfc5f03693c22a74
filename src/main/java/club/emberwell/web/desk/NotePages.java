package club.emberwell.web.desk;

import club.emberwell.desk.rule.NoteGroup;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.desk.rule.Rules;
import club.emberwell.desk.undo.NoteDecisions;
import club.emberwell.entry.EntryState;
import club.emberwell.listing.Part;
import club.emberwell.member.Role;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.LocalPath;
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
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** What rules noticed, by rule and member: one decision for all of it. */
@Path("/desk/notes")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class NotePages extends Pages {
  private static final String PATH = "/desk/notes";

  private final Rules rules;
  private final NoteDecisions decisions;

  NotePages(Rules rules, NoteDecisions decisions) {
    this.rules = rules;
    this.decisions = decisions;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance groups(Listing<NoteGroup> list);

    static native TemplateInstance group(GroupPage page);
  }

  /**
   * The notes of one rule about one member.
   *
   * @param handle name of the member
   * @param own whether the reader is the member
   */
  record GroupPage(
      RuleCode rule,
      UUID member,
      String handle,
      boolean own,
      List<ItemRow> rows,
      List<DeskForms.Choice> choices,
      Form decide,
      Turn turn) {}

  @GET
  public TemplateInstance groups(@RestQuery Integer page) {
    return Templates.groups(
        Listing.of(
            "Noticed by rules", "No open notes.", rules.groups(actor(), Part.page(page)), PATH));
  }

  @GET
  @Path("{rule}/{member}")
  public TemplateInstance group(
      @RestPath String rule, @RestPath UUID member, @RestQuery String by, @RestQuery String place) {
    return page(rule(rule), member, new Turn(by, place), form());
  }

  private static Form form() {
    return DeskForms.together().add(Field.newId());
  }

  private static RuleCode rule(String code) {
    return Coded.of(RuleCode.class, code).orElseThrow(() -> new EntryUnknown("rule"));
  }

  private TemplateInstance page(RuleCode rule, UUID member, Turn turn, Form form) {
    List<RuleNote> notes = rules.group(actor(), rule, member);
    return Templates.group(
        new GroupPage(
            rule,
            member,
            notes.isEmpty() ? null : notes.get(0).item().author().handle(),
            actor().is(member),
            notes.stream().map(ItemRow::of).toList(),
            choices(notes),
            form,
            turn));
  }

  private static List<DeskForms.Choice> choices(List<RuleNote> notes) {
    List<DeskForms.Choice> choices = new ArrayList<>();
    choices.add(new DeskForms.Choice("leave", "Keep all: nothing is wrong", "primary"));
    if (notes.stream().anyMatch(note -> note.item().state() == EntryState.HELD)) {
      choices.add(new DeskForms.Choice("restore", "Restore all", "primary"));
    }
    choices.add(new DeskForms.Choice("hold", "Hold all", "secondary"));
    choices.add(new DeskForms.Choice("remove", "Remove all", "danger"));
    return choices;
  }

  @POST
  @Path("{rule}/{member}")
  public Response decide(@RestPath String rule, @RestPath UUID member, SentForm sent) {
    RuleCode noticed = rule(rule);
    Turn turn = Turn.of(sent);
    return take(sent, NotePages::form, form -> page(noticed, member, turn, form))
        .store(
            s ->
                decisions.decide(
                    actor(),
                    s.id("id"),
                    new NoteDecisions.Group(noticed, member),
                    DeskForms.decided(s.typed("action")),
                    s.typed("reason")))
        .then(run -> turn.done(run.id()));
  }

  @POST
  @Path("{id}/seen")
  public Response seen(@RestPath long id, @RestForm String to) {
    rules.seen(actor(), id);
    return to(LocalPath.of(to, PATH).toString());
  }
}

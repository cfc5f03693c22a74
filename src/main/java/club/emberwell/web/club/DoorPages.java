package club.emberwell.web.club;

import club.emberwell.access.PublicUrl;
import club.emberwell.member.Role;
import club.emberwell.member.door.Invitations;
import club.emberwell.member.door.JoinRequests;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.desk.Turn;
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
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Who comes in: invitations and requests. */
@Path("/desk")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class DoorPages extends Pages {
  private static final int NOTE_LENGTH = 120;
  private static final int NUMBER_LENGTH = 4;
  private static final String APPROVED = "in";
  private static final String DECLINED = "out";

  private final Invitations invitations;
  private final JoinRequests requests;
  private final PublicUrl url;

  DoorPages(Invitations invitations, JoinRequests requests, PublicUrl url) {
    this.invitations = invitations;
    this.requests = requests;
    this.url = url;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance invitations(
        List<Invitations.View> invitations, Form form, String link);

    static native TemplateInstance requests(
        List<JoinRequests.Waiting> waiting, Map<UUID, String> said, Form form, Turn turn);
  }

  @GET
  @Path("invitations")
  public TemplateInstance invitations(@RestQuery String done) {
    say(done, "The invitation is revoked.");
    return invitations(inviteForm(), null);
  }

  private TemplateInstance invitations(Form form, String link) {
    return Templates.invitations(invitations.latest(), form, link);
  }

  @POST
  @Path("invitations")
  public Response invite(SentForm sent) {
    return take(sent, DoorPages::inviteForm, form -> invitations(form, null))
        .attempt(
            s ->
                invitations.make(
                    actor(),
                    new Invitations.Draft(
                        s.typed("note"), number(s.text("uses")), number(s.text("days")))))
        .showOnce(made -> invitations(inviteForm(), url.of("/invitation/" + made.code())));
  }

  /** Zero for what is no number, which the check refuses at its field. */
  private static int number(String typed) {
    try {
      return typed == null ? 0 : Integer.parseInt(typed);
    } catch (NumberFormatException e) {
      return 0;
    }
  }

  @POST
  @Path("invitations/{id}/end")
  public Response endInvitation(@RestPath UUID id) {
    invitations.revoke(actor(), id);
    return to("/desk/invitations?done=ended");
  }

  @GET
  @Path("requests")
  public TemplateInstance requests(
      @RestQuery String done, @RestQuery String by, @RestQuery String place) {
    if (APPROVED.equals(done)) {
      page.say("Approved.");
    } else if (DECLINED.equals(done)) {
      page.say("Declined. They see the reason when they sign in.");
    }
    return requests(Map.of(), new Form(), new Turn(by, place));
  }

  private TemplateInstance requests(Map<UUID, String> said, Form form, Turn turn) {
    return Templates.requests(requests.waiting(), said, form, turn);
  }

  @POST
  @Path("requests/{id}/decision")
  public Response decide(@RestPath UUID id, SentForm sent) {
    boolean yes = "true".equals(sent.typed("accept"));
    Map<UUID, String> said = Map.of(id, sent.values().getOrDefault("reason", ""));
    Turn turn = Turn.of(sent);
    return take(sent, () -> answerTo(id), form -> requests(said, form, turn))
        .run(s -> decide(id, yes, s.typed("reason")))
        .then(
            none ->
                requests.waiting().isEmpty()
                    ? turn.done()
                    : turn.stay("/desk/requests", yes ? APPROVED : DECLINED));
  }

  private void decide(UUID id, boolean yes, String reason) {
    try {
      requests.decide(actor(), id, yes, reason);
    } catch (EntryUnknown e) {
      throw new EntryRefused(
          RemarkId.DECIDED, "", "Somebody else has already answered this request.");
    }
  }

  private static Form answerTo(UUID id) {
    return new Form().named(name -> name + "-" + id).add(Field.of("reason-" + id, "Reason"));
  }

  private static Form inviteForm() {
    return new Form()
        .add(
            Field.of("note", "Note")
                .hint("Who it is for. Only moderators see it.")
                .maxLength(NOTE_LENGTH))
        .add(count("uses", "For how many people", "1"))
        .add(count("days", "For how many days", "14"));
  }

  private static Field count(String name, String label, String usual) {
    return Field.of(name, label)
        .value(usual)
        .inputMode("numeric")
        .maxLength(NUMBER_LENGTH)
        .required();
  }
}

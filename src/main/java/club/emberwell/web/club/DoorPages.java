package club.emberwell.web.club;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.PublicUrl;
import club.emberwell.member.Invitations;
import club.emberwell.member.JoinRequests;
import club.emberwell.member.MemberView;
import club.emberwell.member.Outcome;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.account.Outcomes;
import club.emberwell.web.frame.Field;
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
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Who comes in: invitations and requests. */
@Path("/desk")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class DoorPages {
  private static final int NOTE_LENGTH = 120;
  private static final int NUMBER_LENGTH = 4;

  private final Invitations invitations;
  private final JoinRequests requests;
  private final CurrentActor current;
  private final PublicUrl url;
  private final PageFrame page;

  DoorPages(
      Invitations invitations,
      JoinRequests requests,
      CurrentActor current,
      PublicUrl url,
      PageFrame page) {
    this.invitations = invitations;
    this.requests = requests;
    this.current = current;
    this.url = url;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance invitations(
        List<Invitations.View> invitations, Form form, String link);

    static native TemplateInstance requests(
        List<JoinRequests.Waiting> waiting, Map<UUID, String> said, Form form);
  }

  @GET
  @Path("invitations")
  public TemplateInstance invitations(@RestQuery String done) {
    if (done != null) {
      page.say("The invitation is ended.");
    }
    return Templates.invitations(invitations.latest(), inviteForm("", "1", "14"), null);
  }

  @POST
  @Path("invitations")
  public Response invite(@RestForm String note, @RestForm String uses, @RestForm String days) {
    Outcome<Invitations.Fresh> outcome =
        invitations.make(current.get(), new Invitations.Draft(note, number(uses), number(days)));
    if (outcome instanceof Outcome.Done<Invitations.Fresh> done) {
      String link = url.of("/invitation/" + done.value().code());
      return Response.ok(
              Templates.invitations(invitations.latest(), inviteForm("", "1", "14"), link))
          .header("Cache-Control", "no-store")
          .build();
    }
    page.fail();
    Form form = inviteForm(note, uses, days).remarks(Outcomes.remarks(outcome));
    return Outcomes.status(outcome)
        .entity(Templates.invitations(invitations.latest(), form, null))
        .build();
  }

  /** Zero for what is no number, which the check refuses at its field. */
  private static int number(String typed) {
    try {
      return Integer.parseInt(typed == null ? "" : typed.strip());
    } catch (NumberFormatException e) {
      return 0;
    }
  }

  @POST
  @Path("invitations/{id}/end")
  public Response endInvitation(@RestPath UUID id) {
    invitations.revoke(current.get(), id);
    return Response.seeOther(URI.create("/desk/invitations?done=ended")).build();
  }

  @GET
  @Path("requests")
  public TemplateInstance requests(@RestQuery String done) {
    if (done != null) {
      page.say(done.equals("in") ? "Let in." : "Turned away; the reason is told at sign-in.");
    }
    return Templates.requests(requests.waiting(), Map.of(), new Form());
  }

  @POST
  @Path("requests/{id}/decision")
  public Response decide(@RestPath UUID id, @RestForm String accept, @RestForm String reason) {
    boolean yes = "true".equals(accept);
    Outcome<MemberView> outcome;
    try {
      outcome = requests.decide(current.get(), id, yes, reason);
    } catch (EntryUnknown e) {
      outcome =
          Outcome.refused(
              Remark.error(
                  RemarkId.DECIDED, "", "Somebody else has answered this request meanwhile."));
    }
    if (outcome instanceof Outcome.Done<MemberView>) {
      return Response.seeOther(URI.create("/desk/requests?done=" + (yes ? "in" : "out"))).build();
    }
    page.fail();
    List<Remark> remarks =
        Outcomes.remarks(outcome).stream()
            .map(r -> r.field().isEmpty() ? r : r.at("/reason-" + id))
            .toList();
    Form form = new Form().add(reasonField(id, reason)).remarks(remarks);
    return Outcomes.status(outcome)
        .entity(
            Templates.requests(requests.waiting(), Map.of(id, reason == null ? "" : reason), form))
        .build();
  }

  private static Field reasonField(UUID id, String reason) {
    return Field.of("reason-" + id, "Why not").value(reason);
  }

  private static Form inviteForm(String note, String uses, String days) {
    return new Form()
        .add(
            Field.of("note", "For whom")
                .hint("Only moderators see it.")
                .value(note)
                .maxLength(NOTE_LENGTH))
        .add(
            Field.of("uses", "How many people can use it")
                .value(uses)
                .inputMode("numeric")
                .maxLength(NUMBER_LENGTH)
                .required())
        .add(
            Field.of("days", "For how many days")
                .value(days)
                .inputMode("numeric")
                .maxLength(NUMBER_LENGTH)
                .required());
  }
}

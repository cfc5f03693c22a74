package club.emberwell.web.club;

import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Accounts;
import club.emberwell.member.account.Accounts.Appointment;
import club.emberwell.member.account.PasswordResets;
import club.emberwell.member.account.PasswordResets.HandedOver;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
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
import org.jboss.resteasy.reactive.RestQuery;

/** Who is in charge, and links for those who lost their password. */
@Path("/desk/club/people")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class PeoplePages extends Pages {
  private static final int HANDLE_LENGTH = 30;
  private static final int REASON_LENGTH = 500;

  private final Accounts accounts;
  private final Members members;
  private final PasswordResets resets;

  PeoplePages(Accounts accounts, Members members, PasswordResets resets) {
    this.accounts = accounts;
    this.members = members;
    this.resets = resets;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance people(
        List<MemberView> people, Form role, Form link, HandedOver made);
  }

  @GET
  public TemplateInstance people(@RestQuery String done) {
    say(done, "Done.");
    return page(roleForm(), linkForm(), null);
  }

  @POST
  @Path("role")
  public Response give(SentForm sent) {
    return take(sent, PeoplePages::roleForm, form -> page(form, linkForm(), null))
        .attempt(this::appointed)
        // who gave their own ownership away cannot see this page any more
        .then(
            member ->
                actor().is(member.id()) && member.role() != Role.OWNER
                    ? "/"
                    : "/desk/club/people?done=role");
  }

  private MemberView appointed(SentForm sent) {
    try {
      return accounts.appoint(
          actor(),
          new Appointment(sent.typed("handle"), sent.typed("role"), sent.typed("reason")),
          given(sent));
    } catch (EntryForbidden e) {
      throw new EntryRefused(RemarkId.LAST_OWNER, "/handle", e.getMessage());
    }
  }

  @POST
  @Path("link")
  public Response link(SentForm sent) {
    return take(sent, PeoplePages::linkForm, form -> page(roleForm(), form, null))
        .attempt(this::handOver)
        .showOnce(made -> page(roleForm(), linkForm(), made));
  }

  private HandedOver handOver(SentForm sent) {
    try {
      return resets.handOver(actor(), sent.typed("for"), given(sent));
    } catch (EntryUnknown e) {
      throw new EntryRefused(
          RemarkId.MEMBER_UNKNOWN, "/for", "No active member here has this name.");
    }
  }

  private TemplateInstance page(Form role, Form link, HandedOver made) {
    return Templates.people(members.inCharge(), role, link, made);
  }

  private static Form roleForm() {
    return new Form()
        .add(member("handle"))
        .add(
            Field.of("role", "Role")
                .choice("member", "Member: posts, asks, answers")
                .choice("moderator", "Moderator: checks entries and members")
                .choice("owner", "Owner: decides about the club and its moderators")
                .required())
        .add(
            Field.of("reason", "Why")
                .hint("The log records it.")
                .maxLength(REASON_LENGTH)
                .required());
  }

  private static Form linkForm() {
    return new Form().add(member("for"));
  }

  private static Field member(String name) {
    return Field.of(name, "Member").autocomplete("off").maxLength(HANDLE_LENGTH).required();
  }
}

package club.emberwell.web.club;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.ClubCare;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Outcome;
import club.emberwell.member.PasswordResets;
import club.emberwell.member.PasswordResets.HandedOver;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.account.Outcomes;
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
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;

/** Who is in charge, and links for those who lost their password. */
@Path("/desk/club/people")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class PeoplePages {
  private static final int HANDLE_LENGTH = 30;
  private static final int REASON_LENGTH = 500;

  private final ClubCare care;
  private final Members members;
  private final PasswordResets resets;
  private final CurrentActor current;
  private final PageFrame page;

  PeoplePages(
      ClubCare care, Members members, PasswordResets resets, CurrentActor current, PageFrame page) {
    this.care = care;
    this.members = members;
    this.resets = resets;
    this.current = current;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance people(
        List<MemberView> people, Form role, Form link, HandedOver made);
  }

  @GET
  public TemplateInstance people(@RestQuery String done) {
    if (done != null) {
      page.say("Done.");
    }
    return page(roleForm("", "", ""), linkForm(""), null);
  }

  @POST
  @Path("role")
  public Response give(@RestForm String handle, @RestForm String role, @RestForm String reason) {
    Outcome<MemberView> outcome;
    try {
      outcome = care.appoint(current.get(), handle, role, reason);
    } catch (EntryForbidden e) {
      outcome = Outcome.refused(Remark.error(RemarkId.LAST_OWNER, "/handle", e.getMessage()));
    }
    if (outcome instanceof Outcome.Done<MemberView> done) {
      // who gave their own ownership away cannot see this page any more
      boolean gone = current.get().is(done.value().id()) && done.value().role() != Role.OWNER;
      return Response.seeOther(URI.create(gone ? "/" : "/desk/club/people?done=role")).build();
    }
    page.fail();
    Form form = roleForm(handle, role, reason).remarks(Outcomes.remarks(outcome));
    return Outcomes.status(outcome).entity(page(form, linkForm(""), null)).build();
  }

  @POST
  @Path("link")
  public Response link(@RestForm("for") String handle) {
    try {
      HandedOver made = resets.handOver(current.get(), handle);
      return Response.ok(page(roleForm("", "", ""), linkForm(""), made))
          .header("Cache-Control", "no-store")
          .build();
    } catch (EntryUnknown e) {
      page.fail();
      Form form =
          linkForm(handle)
              .remarks(
                  List.of(
                      Remark.error(
                          RemarkId.MEMBER_UNKNOWN,
                          "/for",
                          "No active member here has this name.")));
      return Response.status(422).entity(page(roleForm("", "", ""), form, null)).build();
    }
  }

  private TemplateInstance page(Form role, Form link, HandedOver made) {
    return Templates.people(members.inCharge(), role, link, made);
  }

  private static Form roleForm(String handle, String role, String reason) {
    return new Form()
        .add(
            Field.of("handle", "Member")
                .value(handle)
                .autocomplete("off")
                .maxLength(HANDLE_LENGTH)
                .required())
        .add(
            Field.of("role", "From now on")
                .value(role)
                .options(
                    List.of(
                        new Option("member", "Member: posts, asks, answers", false),
                        new Option("moderator", "Moderator: decides what stays", false),
                        new Option("owner", "Owner: decides about the club", false)))
                .required())
        .add(
            Field.of("reason", "Why")
                .hint("Stands in the log.")
                .value(reason)
                .maxLength(REASON_LENGTH)
                .required());
  }

  private static Form linkForm(String handle) {
    return new Form()
        .add(
            Field.of("for", "Member")
                .value(handle)
                .autocomplete("off")
                .maxLength(HANDLE_LENGTH)
                .required());
  }
}

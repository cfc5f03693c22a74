package club.emberwell.web.account;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.member.Addresses;
import club.emberwell.member.MailOutbox;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Outcome;
import club.emberwell.member.Role;
import club.emberwell.remark.Remark;
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

/** The member's mail address. */
@Path("/me/email")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class AddressPages {
  private final Addresses addresses;
  private final Members members;
  private final MailOutbox mail;
  private final CurrentActor current;
  private final ClientAddress address;
  private final PageFrame page;

  AddressPages(
      Addresses addresses,
      Members members,
      MailOutbox mail,
      CurrentActor current,
      ClientAddress address,
      PageFrame page) {
    this.addresses = addresses;
    this.members = members;
    this.mail = mail;
    this.current = current;
    this.address = address;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance address(MemberView member, Form form, boolean mail);
  }

  @GET
  @RolesAllowed(Role.WRITE)
  public TemplateInstance show(@RestQuery String done) {
    if (done != null) {
      page.say(done.equals("again") ? "The letter is on its way." : "Saved.");
    }
    MemberView member = member();
    return Templates.address(member, form(member, member.email()), mail.available());
  }

  @POST
  @RolesAllowed(Role.WRITE)
  public Response change(@RestForm String email, @RestForm String password) {
    Outcome<MemberView> outcome =
        addresses.change(current.get(), current.credential(), email, password, address.prefix());
    if (outcome instanceof Outcome.Done<MemberView>) {
      return Response.seeOther(URI.create("/me/email?done=saved")).build();
    }
    return again(outcome, email);
  }

  @POST
  @Path("again")
  @RolesAllowed(Role.WRITE)
  public Response sendAgain() {
    Outcome<Boolean> outcome = addresses.askAgain(current.get());
    if (outcome instanceof Outcome.Done<Boolean>) {
      return Response.seeOther(URI.create("/me/email?done=again")).build();
    }
    return again(outcome, member().email());
  }

  private Response again(Outcome<?> outcome, String email) {
    page.fail();
    MemberView member = member();
    List<Remark> remarks = Outcomes.remarks(outcome);
    return Outcomes.status(outcome)
        .entity(Templates.address(member, form(member, email).remarks(remarks), mail.available()))
        .build();
  }

  private MemberView member() {
    return members.byId(current.get().memberId()).orElseThrow();
  }

  private static Form form(MemberView member, String email) {
    Form form = new Form().add(AccountFields.email(email));
    return member.hasPassword() ? form.add(AccountFields.proof()) : form;
  }
}

package club.emberwell.web.account;

import club.emberwell.access.ClientAddress;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Addresses;
import club.emberwell.member.mail.MailOutbox;
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
import org.jboss.resteasy.reactive.RestQuery;

/** The member's mail address. */
@Path("/me/email")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class AddressPages extends Pages {
  private final Addresses addresses;
  private final Members members;
  private final MailOutbox mail;
  private final ClientAddress address;

  AddressPages(Addresses addresses, Members members, MailOutbox mail, ClientAddress address) {
    this.addresses = addresses;
    this.members = members;
    this.mail = mail;
    this.address = address;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance address(MemberView member, Form form, boolean mail);
  }

  @GET
  @RolesAllowed(Role.WRITE)
  public TemplateInstance show(@RestQuery String done) {
    say(done, "again".equals(done) ? "The e-mail is on its way." : "Saved.");
    return shown(form());
  }

  private TemplateInstance shown(Form form) {
    return Templates.address(member(), form, mail.available());
  }

  @POST
  @RolesAllowed(Role.WRITE)
  public Response change(SentForm sent) {
    return take(sent, this::form, this::shown)
        .attempt(
            s ->
                addresses.change(
                    actor(),
                    current.credential(),
                    s.typed("email"),
                    s.typed("password"),
                    address.prefix()))
        .then("/me/email?done=saved");
  }

  @POST
  @Path("again")
  @RolesAllowed(Role.WRITE)
  public Response sendAgain() {
    return press(this::form, this::shown)
        .attemptTo(s -> addresses.askAgain(actor()))
        .then("/me/email?done=again");
  }

  private MemberView member() {
    return members.byId(actor().memberId()).orElseThrow();
  }

  private Form form() {
    MemberView member = member();
    Form form = new Form().add(AccountFields.email().value(member.email()));
    return member.hasPassword() ? form.add(AccountFields.proof()) : form;
  }
}

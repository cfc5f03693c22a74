package club.emberwell.web.account;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.SessionCookie;
import club.emberwell.member.MemberView;
import club.emberwell.member.Outcome;
import club.emberwell.member.PasswordResets;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;

/** A new password for somebody who lost theirs. */
@Path("/reset")
@Produces(MediaType.TEXT_HTML)
@Blocking
@LocalSignIn
public class ResetPages {
  private final PasswordResets resets;
  private final SessionCookie cookie;
  private final ClientAddress address;
  private final RoutingContext request;
  private final PageFrame page;

  ResetPages(
      PasswordResets resets,
      SessionCookie cookie,
      ClientAddress address,
      RoutingContext request,
      PageFrame page) {
    this.resets = resets;
    this.cookie = cookie;
    this.address = address;
    this.request = request;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance ask(Form form, boolean byMail, boolean sent);

    static native TemplateInstance choose(Form form, String link, boolean works);

    static native TemplateInstance done();
  }

  @GET
  @PermitAll
  public TemplateInstance ask() {
    return Templates.ask(askForm(""), resets.byMail(), false);
  }

  @POST
  @PermitAll
  public Response send(@RestForm String email) {
    Outcome<Boolean> outcome = resets.ask(email, address.prefix());
    if (outcome instanceof Outcome.Done<Boolean>) {
      return Response.ok(Templates.ask(askForm(""), true, true)).build();
    }
    page.fail();
    Form form = askForm(email).remarks(Outcomes.remarks(outcome));
    return Outcomes.status(outcome).entity(Templates.ask(form, resets.byMail(), false)).build();
  }

  @GET
  @Path("{link}")
  @PermitAll
  public Response choose(@RestPath String link) {
    boolean works = resets.waits(link);
    return Response.status(works ? 200 : 404)
        .entity(Templates.choose(passwordForm(), link, works))
        .build();
  }

  @POST
  @Path("{link}")
  @PermitAll
  public Response redeem(@RestPath String link, @RestForm String password) {
    Outcome<MemberView> outcome = resets.redeem(link, password, address.prefix());
    if (outcome instanceof Outcome.Done<MemberView>) {
      cookie.clear(request);
      return Response.ok(Templates.done()).build();
    }
    page.fail();
    Form form = passwordForm().remarks(Outcomes.remarks(outcome));
    return Outcomes.status(outcome)
        .entity(Templates.choose(form, link, resets.waits(link)))
        .build();
  }

  private static Form askForm(String email) {
    return new Form()
        .add(
            Field.of("email", "Mail address")
                .hint("The one you gave here.")
                .value(email)
                .type("email")
                .autocomplete("email")
                .maxLength(AccountFields.EMAIL_LENGTH)
                .required());
  }

  private static Form passwordForm() {
    return new Form().add(AccountFields.newPassword("password"));
  }
}

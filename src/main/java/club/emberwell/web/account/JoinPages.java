package club.emberwell.web.account;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.Problems;
import club.emberwell.access.SessionCookie;
import club.emberwell.member.Accounts.NewMember;
import club.emberwell.member.FirstOwner;
import club.emberwell.member.Invitations;
import club.emberwell.member.MemberView;
import club.emberwell.member.Outcome;
import club.emberwell.member.Sessions;
import club.emberwell.member.Sessions.SignedIn;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;

/** The side doors: an invitation link, and the first owner's code. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class JoinPages {
  private static final int CODE_LENGTH = 60;

  private final Invitations invitations;
  private final FirstOwner first;
  private final Sessions sessions;
  private final SessionCookie cookie;
  private final ClientAddress address;
  private final RoutingContext request;
  private final PageFrame page;

  JoinPages(
      Invitations invitations,
      FirstOwner first,
      Sessions sessions,
      SessionCookie cookie,
      ClientAddress address,
      RoutingContext request,
      PageFrame page) {
    this.invitations = invitations;
    this.first = first;
    this.sessions = sessions;
    this.cookie = cookie;
    this.address = address;
    this.request = request;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance invitation(Form form, String code);

    static native TemplateInstance over(String why);

    static native TemplateInstance firstOwner(Form form);
  }

  @GET
  @Path("invitation/{code}")
  @PermitAll
  public Response invitation(@RestPath String code) {
    Outcome<Boolean> outcome = invitations.opens(code, address.prefix());
    if (outcome instanceof Outcome.Done<Boolean>) {
      return Response.ok(Templates.invitation(AccountFields.newMember("", ""), code)).build();
    }
    return over(outcome);
  }

  @POST
  @Path("invitation/{code}")
  @PermitAll
  @LocalSignIn
  public Response accept(
      @RestPath String code,
      @RestForm String handle,
      @RestForm String email,
      @RestForm String password,
      @HeaderParam("User-Agent") String browser) {
    Outcome<MemberView> outcome =
        invitations.accept(code, new NewMember(handle, email, password), address.prefix());
    if (outcome instanceof Outcome.Done<MemberView>) {
      return begin(handle, password, browser, "/bench");
    }
    page.fail();
    Form form = AccountFields.newMember(handle, email).remarks(Outcomes.remarks(outcome));
    return Outcomes.status(outcome).entity(Templates.invitation(form, code)).build();
  }

  private Response over(Outcome<?> outcome) {
    int status = outcome instanceof Outcome.Throttled<?> ? 429 : 404;
    return Response.status(status)
        .entity(Templates.over(Outcomes.remarks(outcome).get(0).detail()))
        .build();
  }

  @GET
  @Path("first-owner")
  @PermitAll
  public TemplateInstance firstOwner() {
    requireNoOwner();
    return Templates.firstOwner(ownerForm("", "", ""));
  }

  @POST
  @Path("first-owner")
  @PermitAll
  public Response found(
      @RestForm String code,
      @RestForm String handle,
      @RestForm String email,
      @RestForm String password,
      @HeaderParam("User-Agent") String browser) {
    requireNoOwner();
    Outcome<MemberView> outcome =
        first.found(code, new NewMember(handle, email, password), address.prefix());
    if (outcome instanceof Outcome.Done<MemberView>) {
      return begin(handle, password, browser, "/desk/club");
    }
    page.fail();
    Form form = ownerForm(code, handle, email).remarks(Outcomes.remarks(outcome));
    return Outcomes.status(outcome).entity(Templates.firstOwner(form)).build();
  }

  private void requireNoOwner() {
    if (!first.wanted()) {
      throw Problems.notFound().exception();
    }
  }

  private Response begin(String handle, String password, String browser, String path) {
    Outcome<SignedIn> outcome = sessions.signIn(handle, password, browser, address.prefix());
    if (outcome instanceof Outcome.Done<SignedIn> done) {
      cookie.read(request).ifPresent(sessions::signOut);
      cookie.set(request, done.value());
      return Response.seeOther(URI.create(path)).build();
    }
    return Response.seeOther(URI.create("/sign-in")).build();
  }

  private static Form ownerForm(String code, String handle, String email) {
    return AccountFields.newMember(handle, email)
        .add(
            Field.of("code", "The code from the log")
                .hint("24 letters and digits; dashes do not matter.")
                .value(code)
                .autocomplete("one-time-code")
                .maxLength(CODE_LENGTH)
                .required());
  }
}

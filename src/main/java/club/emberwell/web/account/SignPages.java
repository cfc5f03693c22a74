package club.emberwell.web.account;

import club.emberwell.api.access.ClientAddress;
import club.emberwell.api.access.SessionCookie;
import club.emberwell.member.Accounts;
import club.emberwell.member.Accounts.NewMember;
import club.emberwell.member.MemberView;
import club.emberwell.member.Outcome;
import club.emberwell.member.Sessions;
import club.emberwell.member.Sessions.SignedIn;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.LocalPath;
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
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;

/** The door: joining, signing in, signing out. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class SignPages {
  private static final int HANDLE_LENGTH = 30;
  private static final int PASSWORD_LENGTH = 128;
  private static final int EMAIL_LENGTH = 254;

  private final Accounts accounts;
  private final Sessions sessions;
  private final SessionCookie cookie;
  private final ClientAddress address;
  private final RoutingContext request;
  private final PageFrame page;

  SignPages(
      Accounts accounts,
      Sessions sessions,
      SessionCookie cookie,
      ClientAddress address,
      RoutingContext request,
      PageFrame page) {
    this.accounts = accounts;
    this.sessions = sessions;
    this.cookie = cookie;
    this.address = address;
    this.request = request;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance signIn(Form form, String to);

    static native TemplateInstance signUp(Form form, String to);
  }

  @GET
  @Path("sign-in")
  @PermitAll
  public TemplateInstance signIn(@RestQuery String to) {
    return Templates.signIn(signInForm(""), LocalPath.of(to, "/").toString());
  }

  @POST
  @Path("sign-in")
  @PermitAll
  public Response signIn(
      @RestForm String handle,
      @RestForm String password,
      @RestForm String to,
      @HeaderParam("User-Agent") String browser) {
    Outcome<SignedIn> outcome = sessions.signIn(handle, password, browser, address.prefix());
    if (outcome instanceof Outcome.Done<SignedIn> done) {
      // a sign-in never goes on with an older session of the same browser
      cookie.read(request).ifPresent(sessions::signOut);
      cookie.set(request, done.value());
      return Response.seeOther(LocalPath.of(to, "/")).build();
    }
    Form form = signInForm(handle).remarks(Outcomes.remarks(outcome));
    return refused(outcome, Templates.signIn(form, LocalPath.of(to, "/").toString()));
  }

  @GET
  @Path("sign-up")
  @PermitAll
  public TemplateInstance signUp(@RestQuery String to) {
    return Templates.signUp(signUpForm("", ""), LocalPath.of(to, "/bench").toString());
  }

  @POST
  @Path("sign-up")
  @PermitAll
  public Response signUp(
      @RestForm String handle,
      @RestForm String email,
      @RestForm String password,
      @RestForm String to,
      @HeaderParam("User-Agent") String browser) {
    Outcome<MemberView> outcome =
        accounts.register(new NewMember(handle, email, password), address.prefix());
    if (outcome instanceof Outcome.Done<MemberView>) {
      return signIn(handle, password, LocalPath.of(to, "/bench").toString(), browser);
    }
    Form form = signUpForm(handle, email).remarks(Outcomes.remarks(outcome));
    return refused(outcome, Templates.signUp(form, LocalPath.of(to, "/bench").toString()));
  }

  @POST
  @Path("sign-out")
  @PermitAll
  public Response signOut() {
    cookie.read(request).ifPresent(sessions::signOut);
    cookie.clear(request);
    return Response.seeOther(LocalPath.of("/", "/")).build();
  }

  private Response refused(Outcome<?> outcome, TemplateInstance again) {
    page.fail();
    return Outcomes.status(outcome).entity(again).build();
  }

  private static Form signInForm(String handle) {
    return new Form()
        .add(
            Field.of("handle", "Name here")
                .value(handle)
                .autocomplete("username")
                .maxLength(HANDLE_LENGTH)
                .required())
        .add(
            Field.of("password", "Password")
                .type("password")
                .autocomplete("current-password")
                .maxLength(PASSWORD_LENGTH)
                .required());
  }

  private static Form signUpForm(String handle, String email) {
    return new Form()
        .add(
            Field.of("handle", "Name here")
                .hint("3 to 30 letters, digits, - and _. Everybody sees it beside what you post.")
                .value(handle)
                .autocomplete("username")
                .maxLength(HANDLE_LENGTH)
                .required())
        .add(
            Field.of("email", "Mail address")
                .hint(
                    "If you like: only for a forgotten password and for watches you set. Nobody sees it.")
                .value(email)
                .type("email")
                .autocomplete("email")
                .maxLength(EMAIL_LENGTH))
        .add(
            Field.of("password", "Password")
                .hint("8 characters or more; a few words are better than one odd one.")
                .type("password")
                .autocomplete("new-password")
                .maxLength(PASSWORD_LENGTH)
                .required());
  }
}

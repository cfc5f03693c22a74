package club.emberwell.web.account;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.ClientAddress;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.SessionCookie;
import club.emberwell.member.Accounts.NewMember;
import club.emberwell.member.ClubSettings;
import club.emberwell.member.Doors;
import club.emberwell.member.MemberStatus;
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
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;

/** The door: joining, signing in, signing out. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class SignPages {
  private static final int HANDLE_LENGTH = 30;
  private static final int PASSWORD_LENGTH = 128;
  private static final int REQUEST_LENGTH = 1000;

  private final Doors doors;
  private final ClubSettings club;
  private final Sessions sessions;
  private final SessionCookie cookie;
  private final ClientAddress address;
  private final RoutingContext request;
  private final PageFrame page;

  SignPages(
      Doors doors,
      ClubSettings club,
      Sessions sessions,
      SessionCookie cookie,
      ClientAddress address,
      RoutingContext request,
      PageFrame page) {
    this.doors = doors;
    this.club = club;
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

    static native TemplateInstance signUp(Form form, String to, boolean byInvitation);

    static native TemplateInstance waiting(String handle);
  }

  @GET
  @Path("sign-in")
  @PermitAll
  public Response signIn(@RestQuery String to) {
    URI after = LocalPath.of(to, "/");
    if (!club.localSignIn()) {
      return Response.seeOther(elsewhere(after)).build();
    }
    return Response.ok(Templates.signIn(signInForm(""), after.toString())).build();
  }

  /** Where signing in begins when only the provider's word counts. */
  private static URI elsewhere(URI after) {
    return URI.create(
        "/sign-in/sso?to=" + URLEncoder.encode(after.toString(), StandardCharsets.UTF_8));
  }

  @POST
  @Path("sign-in")
  @PermitAll
  @LocalSignIn
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
  @LocalSignIn
  public TemplateInstance signUp(@RestQuery String to) {
    return signUpPage(signUpForm("", "", ""), to);
  }

  @POST
  @Path("sign-up")
  @PermitAll
  @LocalSignIn
  public Response signUp(
      @RestForm String handle,
      @RestForm String email,
      @RestForm String password,
      @RestForm String request,
      @RestForm String to,
      @HeaderParam("User-Agent") String browser) {
    NewMember newcomer = new NewMember(handle, email, password);
    String asked = club.door() == ClubSettings.Door.REQUEST ? request : null;
    Outcome<MemberView> outcome = doors.enter(newcomer, null, asked, address.prefix());
    if (outcome instanceof Outcome.Done<MemberView> done) {
      return done.value().status() == MemberStatus.WAITING
          ? Response.ok(Templates.waiting(done.value().handle())).build()
          : signIn(handle, password, LocalPath.of(to, "/bench").toString(), browser);
    }
    Form form = signUpForm(handle, email, request).remarks(Outcomes.remarks(outcome));
    return refused(outcome, signUpPage(form, to));
  }

  private TemplateInstance signUpPage(Form form, String to) {
    return Templates.signUp(
        form, LocalPath.of(to, "/bench").toString(), club.door() == ClubSettings.Door.INVITATION);
  }

  @POST
  @Path("sign-out")
  @PermitAll
  @AtAnyPace
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

  private Form signUpForm(String handle, String email, String request) {
    Form form = AccountFields.newMember(handle, email);
    if (club.door() == ClubSettings.Door.REQUEST) {
      form.add(
          Field.of("request", "Who you are and why you would like to join")
              .hint("Moderators read it; it goes once they have decided.")
              .value(request)
              .maxLength(REQUEST_LENGTH)
              .required());
    }
    return form;
  }
}

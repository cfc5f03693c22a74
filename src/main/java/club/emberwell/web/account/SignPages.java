package club.emberwell.web.account;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.LocalSignIn;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.door.Doors;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.LocalPath;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.jboss.resteasy.reactive.RestQuery;

/** The door: joining, signing in, signing out. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class SignPages extends Pages {
  private final Doors doors;
  private final ClubOptions club;
  private final ThisBrowser browser;

  SignPages(Doors doors, ClubOptions club, ThisBrowser browser) {
    this.doors = doors;
    this.club = club;
    this.browser = browser;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance signIn(Form form, String to, String door);

    static native TemplateInstance signUp(Form form, String to, String door, boolean byInvitation);

    static native TemplateInstance waiting(String handle, String door);
  }

  @GET
  @Path("sign-in")
  @PermitAll
  public Response signIn(@RestQuery String to) {
    URI after = LocalPath.of(to, "/");
    if (!club.localSignIn()) {
      return Response.seeOther(elsewhere(after)).build();
    }
    return Response.ok(Templates.signIn(signInForm(), after.toString(), door())).build();
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
  public Response signIn(SentForm sent) {
    return signIn(sent, LocalPath.of(sent.typed("to"), "/").toString());
  }

  private Response signIn(SentForm sent, String to) {
    return take(sent, SignPages::signInForm, form -> Templates.signIn(form, to, door()))
        .attempt(s -> browser.signIn(s.typed("handle"), s.typed("password")))
        .then(to);
  }

  @GET
  @Path("sign-up")
  @PermitAll
  @LocalSignIn
  public TemplateInstance signUp(@RestQuery String to) {
    return signUpPage(signUpForm(), to);
  }

  @POST
  @Path("sign-up")
  @PermitAll
  @LocalSignIn
  public Response signUp(SentForm sent) {
    String to = sent.typed("to");
    String asked = club.door() == ClubOptions.Door.REQUEST ? sent.typed("request") : null;
    return take(sent, this::signUpForm, form -> signUpPage(form, to))
        .attempt(s -> doors.enter(AccountFields.newMember(s), null, asked, browser.address()))
        .answer(
            member ->
                member.status() == MemberStatus.WAITING
                    ? Response.ok(Templates.waiting(member.handle(), "/sign-in")).build()
                    : signIn(sent, LocalPath.of(to, "/bench").toString()));
  }

  private TemplateInstance signUpPage(Form form, String to) {
    return Templates.signUp(
        form,
        LocalPath.of(to, "/bench").toString(),
        door(),
        club.door() == ClubOptions.Door.INVITATION);
  }

  /** How people come in, in one sentence. */
  private String door() {
    return switch (club.door()) {
      case OPEN -> "Anybody can join this club.";
      case REQUEST -> "Anybody can ask to join this club; a moderator decides.";
      case INVITATION -> "People join this club by invitation from a member.";
    };
  }

  @POST
  @Path("sign-out")
  @PermitAll
  @AtAnyPace
  public Response signOut() {
    browser.signOut();
    // what the browser kept of pages and pictures; unsent forms are its own matter (phone.js)
    return Response.fromResponse(to("/")).header("Clear-Site-Data", "\"cache\"").build();
  }

  private static Form signInForm() {
    return new Form()
        .add(
            Field.of("handle", "User name")
                .autocomplete("username")
                .maxLength(AccountFields.HANDLE_LENGTH)
                .required())
        .add(AccountFields.knownPassword("password", "Password"));
  }

  private Form signUpForm() {
    Form form = AccountFields.newMember();
    return club.door() == ClubOptions.Door.REQUEST ? form.add(AccountFields.request()) : form;
  }
}

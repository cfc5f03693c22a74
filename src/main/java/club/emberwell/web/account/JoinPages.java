package club.emberwell.web.account;

import club.emberwell.access.LocalSignIn;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.door.FirstOwner;
import club.emberwell.member.door.Invitations;
import club.emberwell.member.door.NewClub;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.TooManyTries;
import club.emberwell.remark.TurnedDown;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
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
import org.jboss.resteasy.reactive.RestPath;

/** The side doors: an invitation link, and the first owner's code. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
public class JoinPages extends Pages {
  static final String FIRST_OWNER = "/first-owner";
  private static final int CODE_LENGTH = 60;

  private final Invitations invitations;
  private final FirstOwner first;
  private final NewClub club;
  private final ThisBrowser browser;

  JoinPages(Invitations invitations, FirstOwner first, NewClub club, ThisBrowser browser) {
    this.invitations = invitations;
    this.first = first;
    this.club = club;
    this.browser = browser;
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
    try {
      invitations.find(code, browser.address());
      return Response.ok(Templates.invitation(AccountFields.newMember(), code)).build();
    } catch (EntryRefused e) {
      return over(Response.Status.NOT_FOUND, e);
    } catch (TooManyTries e) {
      return over(Response.Status.TOO_MANY_REQUESTS, e);
    }
  }

  private static Response over(Response.Status status, RuntimeException why) {
    return Response.status(status).entity(Templates.over(why.getMessage())).build();
  }

  @POST
  @Path("invitation/{code}")
  @PermitAll
  @LocalSignIn
  public Response accept(@RestPath String code, SentForm sent) {
    return take(sent, AccountFields::newMember, form -> Templates.invitation(form, code))
        .attempt(s -> invitations.accept(code, AccountFields.newMember(s), browser.address()))
        .then(member -> begin(sent, "/bench"));
  }

  @GET
  @Path("first-owner")
  @PermitAll
  public Response firstOwner() {
    if (club.isEmpty() && !first.wanted()) {
      // another node has the owner
      club.entered();
      return to("/");
    }
    requireNoOwner();
    return Response.ok(Templates.firstOwner(ownerForm())).build();
  }

  @POST
  @Path("first-owner")
  @PermitAll
  public Response found(SentForm sent) {
    requireNoOwner();
    return take(sent, JoinPages::ownerForm, Templates::firstOwner)
        .attempt(s -> first.found(s.typed("code"), AccountFields.newMember(s), browser.address()))
        .then(member -> begin(sent, "/desk/club/first-steps"));
  }

  private void requireNoOwner() {
    if (!first.wanted()) {
      throw Problems.notFound().exception();
    }
  }

  private String begin(SentForm sent, String path) {
    try {
      browser.signIn(sent.typed("handle"), sent.typed("password"));
      return path;
    } catch (TurnedDown e) {
      return "/sign-in";
    }
  }

  private static Form ownerForm() {
    return new Form()
        .add(
            Field.of("code", "Code")
                .hint("28 letters and digits. Dashes do not matter.")
                .autocomplete("one-time-code")
                .maxLength(CODE_LENGTH)
                .required())
        .addAll(AccountFields.newMember());
  }
}

package club.emberwell.web.club;

import club.emberwell.member.MemberLimits;
import club.emberwell.member.Role;
import club.emberwell.member.account.SignOuts;
import club.emberwell.member.account.SignOuts.Wish;
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
import org.jboss.resteasy.reactive.RestQuery;

/** Where an owner signs others out. */
@Path(SignOutPages.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class SignOutPages extends Pages {
  static final String PATH = "/desk/club/sign-out";

  private final SignOuts signOuts;

  SignOutPages(SignOuts signOuts) {
    this.signOuts = signOuts;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance signOut(Form form);
  }

  @GET
  public TemplateInstance ask(@RestQuery String done) {
    say(done, "Done. Whoever was signed in there has to sign in again.");
    return Templates.signOut(form());
  }

  @POST
  public Response signOut(SentForm sent) {
    return take(sent, SignOutPages::form, Templates::signOut)
        .attemptTo(s -> signOuts.signOut(actor(), wish(s), given(s)))
        .then(PATH + "?done=signed-out");
  }

  private static Wish wish(SentForm sent) {
    return new Wish(
        sent.typed("handle"),
        "everybody".equals(sent.typed("who")),
        "keep".equals(sent.typed("programs")),
        sent.typed("reason"));
  }

  private static Form form() {
    return new Form()
        .add(
            Field.of("who", "Who")
                .choice("one", "One member")
                .choice("everybody", "Everybody, but not this browser")
                .value("one")
                .required())
        .add(
            Field.of("handle", "Member")
                .hint("Leave it empty for everybody.")
                .autocomplete("off")
                .maxLength(MemberLimits.HANDLE_MAX))
        .add(
            Field.of("programs", "Programs with a token")
                .choice("end", "End too: their tokens stop working")
                .choice("keep", "Go on")
                .value("end")
                .required())
        .add(
            Field.of("reason", "Why")
                .hint("The log records it.")
                .maxLength(MemberLimits.REASON_MAX)
                .required());
  }
}

package club.emberwell.web.account;

import club.emberwell.access.LocalSignIn;
import club.emberwell.member.account.NewPasswords;
import club.emberwell.member.account.PasswordResets;
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

/** A new password for somebody who lost theirs. */
@Path("/reset")
@Produces(MediaType.TEXT_HTML)
@Blocking
@LocalSignIn
public class ResetPages extends Pages {
  private final PasswordResets resets;
  private final NewPasswords passwords;
  private final ThisBrowser browser;

  ResetPages(PasswordResets resets, NewPasswords passwords, ThisBrowser browser) {
    this.resets = resets;
    this.passwords = passwords;
    this.browser = browser;
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
    return asking(askForm());
  }

  private TemplateInstance asking(Form form) {
    return Templates.ask(form, resets.byMail(), false);
  }

  @POST
  @PermitAll
  public Response send(SentForm sent) {
    return take(sent, ResetPages::askForm, this::asking)
        .attemptTo(s -> resets.ask(s.typed("email"), browser.address()))
        .show((form, done) -> Templates.ask(form, true, true));
  }

  @GET
  @Path("{link}")
  @PermitAll
  public Response choose(@RestPath String link) {
    boolean works = passwords.waits(link);
    return Response.status(works ? 200 : 404)
        .entity(Templates.choose(passwordForm(), link, works))
        .build();
  }

  @POST
  @Path("{link}")
  @PermitAll
  public Response redeem(@RestPath String link, SentForm sent) {
    return take(
            sent,
            ResetPages::passwordForm,
            form -> Templates.choose(form, link, passwords.waits(link)))
        .attempt(s -> passwords.redeem(link, s.typed("password"), browser.address()))
        .answer(
            member -> {
              browser.forget();
              return Response.ok(Templates.done()).build();
            });
  }

  private static Form askForm() {
    return new Form().add(AccountFields.email().hint("The address of your account.").required());
  }

  private static Form passwordForm() {
    return new Form().add(AccountFields.newPassword("password"));
  }
}

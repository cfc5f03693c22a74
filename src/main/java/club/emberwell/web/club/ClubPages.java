package club.emberwell.web.club;

import club.emberwell.member.Licence;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubCare;
import club.emberwell.member.club.ClubOptions.Card;
import club.emberwell.member.mail.MailOutbox;
import club.emberwell.remark.Remarks;
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

/** What owners decide about the club. */
@Path("/desk/club")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class ClubPages extends Pages {
  private static final String PATH = "/desk/club";

  /** The version of what was saved once: owners come from their first steps and go on there. */
  private static final long FIRST_SAVED = 2;

  private static final int NAME_LENGTH = 80;
  private static final int LICENCE_LENGTH = 600;
  private static final int MEGABYTES_LENGTH = 6;
  private static final int NOTES_LENGTH = 2000;

  private final ClubCare care;
  private final MailOutbox mail;

  ClubPages(ClubCare care, MailOutbox mail) {
    this.care = care;
    this.mail = mail;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance club(Form form, MailOutbox.State mail);
  }

  @GET
  public TemplateInstance club(@RestQuery String done) {
    say(done, "Saved.");
    return shown(form());
  }

  private TemplateInstance shown(Form form) {
    return Templates.club(form, mail.state());
  }

  @POST
  public Response change(SentForm sent) {
    return take(sent, this::form, this::shown)
        .attempt(s -> care.change(actor(), draft(s), s.version(), given(s)))
        .then(
            card ->
                card.version() == FIRST_SAVED
                    ? FirstStepPages.PATH + "?done=saved"
                    : PATH + "?done=saved");
  }

  private static ClubCare.Draft draft(SentForm sent) {
    Integer photoMegabytes = sent.number("photoMegabytes");
    Remarks.refuse(sent.remarks());
    return new ClubCare.Draft(
        sent.typed("name"),
        sent.typed("door"),
        sent.typed("reading"),
        sent.flag("localSignIn"),
        sent.typed("licence"),
        sent.typed("dataLicence"),
        sent.typed("notes"),
        photoMegabytes,
        null);
  }

  private Form form() {
    Card card = care.card();
    return new Form()
        .changing("club", card.version(), PATH)
        .add(
            Field.of("name", "Name of the club")
                .value(card.name())
                .maxLength(NAME_LENGTH)
                .required())
        .add(
            choice("door", "Who can join", card.door().code())
                .choice("invitation", "With an invitation link only")
                .choice("request", "Anybody can ask, a moderator decides")
                .choice("open", "Anybody"))
        .add(
            choice("reading", "Who can read", card.readingPublic() ? "public" : "members")
                .choice("members", "Members only")
                .choice("public", "Everybody"))
        .add(
            choice(
                    "localSignIn",
                    "Sign in with name and password",
                    Boolean.toString(card.localSignIn()))
                .hint("If off, members sign in by single sign-on only.")
                .choice("true", "On")
                .choice("false", "Off"))
        .add(
            Field.of("licence", "Terms under which members share")
                .hint(
                    "Shown to new members and in every export. A change does not apply to what was"
                        + " shared before.")
                .value(card.licence())
                .maxLength(LICENCE_LENGTH)
                .lines()
                .required())
        .add(
            choice("dataLicence", "Licence of what members post", card.dataLicence().code())
                .hint("For members who choose none. What was posted before keeps its licence.")
                .folded()
                .choices(Licence.values(), Licence::label))
        .add(
            Field.of("notes", "About the club")
                .hint("Shown on the page “About this club”.")
                .value(card.notes())
                .maxLength(NOTES_LENGTH)
                .lines())
        .add(
            Field.of("photoMegabytes", "Space for photos of one member (MB)")
                .hint("A photo takes about 0.4 MB. If you choose less, nothing is removed.")
                .value(Integer.toString(card.photoMegabytes()))
                .inputMode("numeric")
                .maxLength(MEGABYTES_LENGTH)
                .required());
  }

  private static Field choice(String name, String label, String value) {
    return Field.of(name, label).value(value).required();
  }
}

package club.emberwell.web.club;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.ClubCare;
import club.emberwell.member.ClubSettings.Card;
import club.emberwell.member.MailOutbox;
import club.emberwell.member.Outcome;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.account.Outcomes;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestQuery;

/** What owners decide about the club. */
@Path("/desk/club")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class ClubPages {
  private static final int NAME_LENGTH = 80;
  private static final int LICENCE_LENGTH = 600;
  private static final int NOTES_LENGTH = 2000;

  private final ClubCare care;
  private final MailOutbox mail;
  private final CurrentActor current;
  private final PageFrame page;

  ClubPages(ClubCare care, MailOutbox mail, CurrentActor current, PageFrame page) {
    this.care = care;
    this.mail = mail;
    this.current = current;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance club(Form form, long version, MailOutbox.State mail);
  }

  @GET
  public TemplateInstance club(@RestQuery String done) {
    if (done != null) {
      page.say("Saved.");
    }
    Card card = care.card();
    ClubCare.Draft now =
        new ClubCare.Draft(
            card.name(),
            card.door().code(),
            card.readingPublic() ? "public" : "members",
            card.localSignIn(),
            card.licence(),
            card.notes());
    return Templates.club(form(now), card.version(), mail.state());
  }

  @POST
  public Response change(MultivaluedMap<String, String> sent) {
    ClubCare.Draft draft =
        new ClubCare.Draft(
            sent.getFirst("name"),
            sent.getFirst("door"),
            sent.getFirst("reading"),
            flag(sent.getFirst("localSignIn")),
            sent.getFirst("licence"),
            sent.getFirst("notes"));
    Outcome<Card> outcome;
    long version;
    try {
      version = Long.parseLong(String.valueOf(sent.getFirst("version")));
      outcome = care.change(current.get(), draft, version);
    } catch (NumberFormatException | EntryChanged e) {
      version = care.card().version();
      outcome =
          Outcome.refused(
              Remark.error(
                  RemarkId.CHANGED,
                  "",
                  "Another owner changed the settings meanwhile. Yours stand below; look at theirs"
                      + " in another window before you save again."));
    }
    if (outcome instanceof Outcome.Done<Card>) {
      return Response.seeOther(URI.create("/desk/club?done=saved")).build();
    }
    page.fail();
    return Outcomes.status(outcome)
        .entity(
            Templates.club(form(draft).remarks(Outcomes.remarks(outcome)), version, mail.state()))
        .build();
  }

  private static Boolean flag(String sent) {
    return "true".equals(sent) || "false".equals(sent) ? Boolean.valueOf(sent) : null;
  }

  private static Form form(ClubCare.Draft draft) {
    return new Form()
        .add(
            Field.of("name", "The club's name")
                .value(draft.name())
                .maxLength(NAME_LENGTH)
                .required())
        .add(
            choice("door", "How people come in", draft.door())
                .options(
                    List.of(
                        new Option("invitation", "By invitation link only", false),
                        new Option("request", "They ask, a moderator decides", false),
                        new Option("open", "Everybody can join", false))))
        .add(
            choice("reading", "Who can read", draft.reading())
                .options(
                    List.of(
                        new Option("members", "Members only", false),
                        new Option("public", "Everybody", false))))
        .add(
            choice("localSignIn", "Names and passwords of this server", text(draft.localSignIn()))
                .hint("Switched off, only single sign-on lets people in.")
                .options(
                    List.of(new Option("true", "Count", false), new Option("false", "Off", false))))
        .add(
            Field.of("licence", "Under which terms members share")
                .hint(
                    "Said when somebody joins and in every export. Changing it later does not"
                        + " change what was shared before.")
                .value(draft.licence())
                .maxLength(LICENCE_LENGTH)
                .required())
        .add(
            Field.of("notes", "What strangers read about the club")
                .hint("Stands on “About this club”.")
                .value(draft.notes())
                .maxLength(NOTES_LENGTH));
  }

  private static Field choice(String name, String label, String value) {
    return Field.of(name, label).value(value).required();
  }

  private static String text(Boolean flag) {
    return flag == null ? "" : flag.toString();
  }
}

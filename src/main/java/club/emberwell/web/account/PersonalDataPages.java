package club.emberwell.web.account;

import club.emberwell.access.Downloads;
import club.emberwell.exchange.Eraser;
import club.emberwell.exchange.MemberDownload;
import club.emberwell.exchange.PersonalData.Choice;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
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

/** A member's rights: take all data along, or be forgotten. */
@Path("/me/rights")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class PersonalDataPages extends Pages {
  private final MemberDownload download;
  private final Eraser eraser;
  private final Members members;
  private final ThisBrowser browser;

  PersonalDataPages(MemberDownload download, Eraser eraser, Members members, ThisBrowser browser) {
    this.download = download;
    this.eraser = eraser;
    this.members = members;
    this.browser = browser;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance rights(Form form, boolean hasPassword);
  }

  @GET
  public TemplateInstance rights() {
    return shown(form());
  }

  private TemplateInstance shown(Form form) {
    return Templates.rights(form, form.find("password").isPresent());
  }

  @GET
  @Path("data")
  @Produces({"application/zip", MediaType.TEXT_HTML})
  public Response data() {
    return Downloads.once(download.pack(actor()));
  }

  @POST
  public Response erase(SentForm sent) {
    return take(sent, this::form, this::shown)
        .attempt(this::erased)
        .then(
            choice -> {
              browser.forget();
              return "/farewell";
            });
  }

  private Choice erased(SentForm sent) {
    if (!"yes".equals(sent.typed("sure"))) {
      throw new EntryRefused(
          RemarkId.SURE_MISSING, "/sure", "Please tick the box: this cannot be undone.");
    }
    return eraser.erase(
        actor(),
        current.credential(),
        sent.typed("choice"),
        sent.typed("password"),
        browser.address());
  }

  private Form form() {
    Form form =
        new Form()
            .add(
                Field.of("choice", "What happens to your results")
                    .choice("keep", "Keep them, as by a former member")
                    .choice("remove", "Delete them too")
                    .required())
            .add(Field.of("sure", "I know that this cannot be undone"));
    boolean hasPassword = members.byId(actor().memberId()).orElseThrow().hasPassword();
    return hasPassword ? form.add(AccountFields.proof()) : form;
  }
}

package club.emberwell.web.account;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.Downloads;
import club.emberwell.access.Problems;
import club.emberwell.access.SessionCookie;
import club.emberwell.exchange.Eraser;
import club.emberwell.exchange.MemberDownload;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Outcome;
import club.emberwell.member.PersonalData.Choice;
import club.emberwell.member.Role;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;

/** A member's rights: take all data along, or be forgotten. */
@Path("/me/rights")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class RightsPages {
  private final MemberDownload download;
  private final Eraser eraser;
  private final Members members;
  private final CurrentActor current;
  private final ClientAddress address;
  private final SessionCookie cookie;
  private final RoutingContext request;
  private final PageFrame page;

  RightsPages(
      MemberDownload download,
      Eraser eraser,
      Members members,
      CurrentActor current,
      ClientAddress address,
      SessionCookie cookie,
      RoutingContext request,
      PageFrame page) {
    this.download = download;
    this.eraser = eraser;
    this.members = members;
    this.current = current;
    this.address = address;
    this.cookie = cookie;
    this.request = request;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance rights(Form form, boolean hasPassword);
  }

  @GET
  public TemplateInstance rights() {
    return page("", List.of());
  }

  @GET
  @Path("data")
  @Produces({"application/zip", MediaType.TEXT_HTML})
  public Response data() {
    return Downloads.once(Problems.unwrap(download.pack(current.get())));
  }

  @POST
  public Response erase(@RestForm String choice, @RestForm String password, @RestForm String sure) {
    if (!"yes".equals(sure)) {
      page.fail();
      Remark remark =
          Remark.error(RemarkId.SURE_MISSING, "/sure", "Tick the box: it cannot be taken back.");
      return Response.status(422).entity(page(choice, List.of(remark))).build();
    }
    Outcome<Choice> outcome =
        eraser.erase(current.get(), current.credential(), choice, password, address.prefix());
    if (outcome instanceof Outcome.Done<Choice>) {
      cookie.clear(request);
      return Response.seeOther(URI.create("/farewell")).build();
    }
    page.fail();
    return Outcomes.status(outcome).entity(page(choice, Outcomes.remarks(outcome))).build();
  }

  private TemplateInstance page(String choice, List<Remark> remarks) {
    MemberView member = members.byId(current.get().memberId()).orElseThrow();
    Form form =
        new Form()
            .add(
                Field.of("choice", "What becomes of your measurements")
                    .value(choice)
                    .options(
                        List.of(
                            new Option("keep", "They stay, as by a former member", false),
                            new Option("remove", "They go too", false)))
                    .required())
            .add(Field.of("sure", "I know that this cannot be taken back"));
    if (member.hasPassword()) {
      form.add(AccountFields.proof());
    }
    return Templates.rights(form.remarks(remarks), member.hasPassword());
  }
}

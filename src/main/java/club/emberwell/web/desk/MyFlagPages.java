package club.emberwell.web.desk;

import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.home.Desk;
import club.emberwell.desk.word.CautionProposal;
import club.emberwell.desk.word.CautionProposals;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdict;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
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
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Flagging, and what came of one's flags, entries and proposals. */
@Path("/flags")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class MyFlagPages extends Pages {
  private final Flags flags;
  private final Desk desk;
  private final CautionProposals proposals;

  MyFlagPages(Flags flags, Desk desk, CautionProposals proposals) {
    this.flags = flags;
    this.desk = desk;
    this.proposals = proposals;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance mine(
        Listing<Flag> flags, Listing<Verdict> told, Listing<CautionProposal> proposals);

    static native TemplateInstance flag(String kind, UUID id, Form form);
  }

  @GET
  public TemplateInstance mine(@RestQuery Integer page) {
    Actor actor = actor();
    return Templates.mine(
        Listing.of(
            "Your flags",
            "You have not flagged anything.",
            flags.mine(actor, Part.page(page)),
            "/flags"),
        Listing.of(
            "Decisions about your entries",
            "Nothing.",
            desk.told(actor, Part.page(page)),
            "/flags"),
        Listing.of(
            "Cautions you proposed", "None.", proposals.mine(actor, Part.page(page)), "/flags"));
  }

  @GET
  @Path("{kind}/{id}")
  public TemplateInstance flag(@RestPath String kind, @RestPath UUID id) {
    EntryRef.of(kind, id);
    return Templates.flag(kind, id, DeskForms.flag());
  }

  @POST
  @Path("{kind}/{id}")
  public Response flag(@RestPath String kind, @RestPath UUID id, SentForm sent) {
    EntryRef ref = EntryRef.of(kind, id);
    return take(sent, DeskForms::flag, form -> Templates.flag(kind, id, form))
        .run(s -> flags.flag(actor(), ref, s.typed("reason"), s.typed("note")))
        .then("/flags");
  }

  @POST
  @Path("own/{id}/withdraw")
  public Response withdraw(@RestPath UUID id) {
    flags.withdraw(actor(), id);
    return to("/flags");
  }
}

package club.emberwell.web.desk;

import club.emberwell.catalog.store.CautionCare.Standing;
import club.emberwell.desk.word.CautionProposal;
import club.emberwell.desk.word.CautionProposals;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.desk.word.VocabularyCare.Change;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryUnknown;
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
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Cautions with their standing: texts that wait, and removals that a second moderator confirms. */
@Path("/desk/cautions")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class CautionPages extends Pages {
  private final VocabularyCare care;
  private final CautionProposals proposals;

  CautionPages(VocabularyCare care, CautionProposals proposals) {
    this.care = care;
    this.proposals = proposals;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance cautions(
        Listing<CautionProposal> waiting, List<Standing> leaving, List<Standing> all);

    static native TemplateInstance caution(CautionPage page);
  }

  /**
   * One caution.
   *
   * @param asked whether its removal was proposed
   * @param askedHere whether the reader proposed it
   */
  record CautionPage(
      Standing standing,
      boolean asked,
      boolean askedHere,
      Form form,
      List<Change> history,
      Turn turn) {}

  @GET
  public TemplateInstance cautions(@RestQuery Integer page) {
    Actor actor = actor();
    List<Standing> all = care.cautions(actor);
    return Templates.cautions(
        Listing.of(
            "Proposed texts",
            "No proposals.",
            proposals.waiting(actor, Part.page(page)),
            "/desk/cautions"),
        all.stream().filter(one -> one.removalAskedBy() != null && !one.removed()).toList(),
        all);
  }

  @GET
  @Path("{id}")
  public TemplateInstance caution(
      @RestPath String id, @RestQuery String by, @RestQuery String place) {
    return shown(id, form(), new Turn(by, place));
  }

  private TemplateInstance shown(String id, Form form, Turn turn) {
    Standing standing = care.caution(actor(), id);
    UUID asker = standing.removed() ? null : standing.removalAskedBy();
    return Templates.caution(
        new CautionPage(
            standing,
            asker != null,
            actor().is(asker),
            form,
            care.cautionHistory(id, Part.FIRST).rows(),
            turn));
  }

  private static Form form() {
    return DeskForms.because("The history shows it.");
  }

  /** What a press does: {@code propose}, {@code confirm}, {@code keep} or {@code restore}. */
  @POST
  @Path("{id}/{deed}")
  public Response change(@RestPath String id, @RestPath String deed, SentForm sent) {
    Actor actor = actor();
    Turn turn = Turn.of(sent);
    return take(sent, CautionPages::form, form -> shown(id, form, turn))
        .run(
            s -> {
              String reason = s.typed("reason");
              switch (deed) {
                case "propose" -> care.proposeRemoval(actor, id, reason);
                case "confirm" -> care.confirmRemoval(actor, id, reason);
                case "keep" -> care.keepStanding(actor, id, reason);
                case "restore" -> care.restoreCaution(actor, id, reason);
                default -> throw new EntryUnknown("deed");
              }
            })
        .then(turn.or("/desk/cautions/" + id));
  }
}

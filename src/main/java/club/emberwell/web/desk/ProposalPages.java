package club.emberwell.web.desk;

import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.catalog.store.CautionCare.Standing;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.word.CautionProposal;
import club.emberwell.desk.word.CautionProposals;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.entry.FieldChange;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
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
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Proposing how a caution should read; somebody else puts it in force. */
@Path("/cautions")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class ProposalPages extends Pages {
  private final CautionProposals proposals;
  private final VocabularyCare care;
  private final CatalogService catalog;

  ProposalPages(CautionProposals proposals, VocabularyCare care, CatalogService catalog) {
    this.proposals = proposals;
    this.care = care;
    this.catalog = catalog;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance propose(String id, Form form);

    static native TemplateInstance proposal(Look look);
  }

  /**
   * A proposal beside what is in force.
   *
   * @param own whether the reader wrote it
   */
  record Look(
      CautionProposal proposal,
      List<FieldChange> differences,
      boolean own,
      boolean decides,
      Form form,
      Turn turn) {}

  @GET
  @Path("new")
  public TemplateInstance fresh(@RestQuery String material) {
    return Templates.propose(
        null,
        CautionForm.form(true)
            .fill(
                Map.of(
                    "class", "care",
                    "scope.materials", material == null ? "" : material,
                    "evidence.jurisdiction", "general")));
  }

  @GET
  @Path("{id}/propose")
  public TemplateInstance change(@RestPath String id) {
    return Templates.propose(id, form(id));
  }

  private Form form(String id) {
    Standing standing = care.caution(actor(), id);
    return CautionForm.form(false)
        .changing("caution", standing.version(), "/materials")
        .fill(CautionForm.values(standing.rule()));
  }

  @POST
  @Path("new")
  public Response fresh(SentForm sent) {
    return take(sent, () -> CautionForm.form(true), form -> Templates.propose(null, form))
        .run(s -> propose(s, null, 0))
        .then("/flags");
  }

  @POST
  @Path("{id}/propose")
  public Response change(@RestPath String id, SentForm sent) {
    CautionRule was = care.caution(actor(), id).rule();
    return take(sent, () -> form(id), form -> Templates.propose(id, form))
        .run(s -> propose(s, was, s.version()))
        .then("/flags");
  }

  private void propose(SentForm sent, CautionRule was, int base) {
    CautionRule rule = CautionForm.rule(sent, was, catalog.vocabulary());
    proposals.propose(actor(), rule, base, sent.text("reason"));
  }

  @GET
  @Path("proposals/{id}")
  public TemplateInstance proposal(
      @RestPath UUID id, @RestQuery String by, @RestQuery String place) {
    return look(id, decision(), new Turn(by, place));
  }

  private TemplateInstance look(UUID id, Form form, Turn turn) {
    CautionProposal proposal = proposals.one(actor(), id);
    CautionRule before =
        proposal.base() == 0 ? null : care.caution(actor(), proposal.rule().id()).rule();
    boolean own = actor().is(proposal.member());
    return Templates.proposal(
        new Look(
            proposal,
            care.differences(before, proposal.rule()),
            own,
            actor().moderates() && !own && proposal.waiting(),
            form,
            turn));
  }

  private static Form decision() {
    return new Form()
        .add(
            Field.of("reason", "Message to the author")
                .hint("Needed if you decline.")
                .maxLength(DeskLimits.REASON)
                .lines());
  }

  @POST
  @Path("proposals/{id}")
  @RolesAllowed(Role.MODERATE)
  public Response decide(@RestPath UUID id, SentForm sent) {
    return take(sent, ProposalPages::decision, form -> look(id, form, Turn.of(sent)))
        .run(s -> decide(id, "yes".equals(s.typed("accept")), s.typed("reason")))
        .then(Turn.of(sent).or("/desk/cautions"));
  }

  private void decide(UUID id, boolean accept, String reason) {
    try {
      proposals.decide(actor(), id, accept, reason);
    } catch (EntryChanged e) {
      throw new EntryRefused(
          RemarkId.CHANGED, "", "The caution has changed since. Please decline and say why.");
    }
  }

  @POST
  @Path("proposals/{id}/withdraw")
  public Response withdraw(@RestPath UUID id) {
    proposals.withdraw(actor(), id);
    return to("/flags");
  }
}

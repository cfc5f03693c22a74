package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.catalog.CatalogService;
import club.emberwell.catalog.CautionCare.Standing;
import club.emberwell.catalog.CautionRule;
import club.emberwell.desk.CautionProposal;
import club.emberwell.desk.CautionProposals;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.VocabularyCare;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.FieldChange;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Proposing how a caution should read; somebody else puts it in force. */
@Path("/cautions")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class ProposalPages {
  /** Stands for a version that cannot be read: the caution is to be opened again. */
  private static final int NO_VERSION = -1;

  private final CautionProposals proposals;
  private final VocabularyCare care;
  private final CatalogService catalog;
  private final CurrentActor current;
  private final DeskForms forms;

  ProposalPages(
      CautionProposals proposals,
      VocabularyCare care,
      CatalogService catalog,
      CurrentActor current,
      DeskForms forms) {
    this.proposals = proposals;
    this.care = care;
    this.catalog = catalog;
    this.current = current;
    this.forms = forms;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance propose(String id, int base, Form form, List<Field> fields);

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
      Form form) {}

  @GET
  @Path("new")
  public TemplateInstance fresh(@RestQuery String material) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("class", "care");
    values.put("scope.materials", material == null ? "" : material);
    values.put("evidence.jurisdiction", "general");
    return shown(null, 0, CautionForm.form(values, true));
  }

  @GET
  @Path("{id}/propose")
  public TemplateInstance change(@RestPath String id) {
    Standing standing = care.caution(current.get(), id);
    Map<String, String> values = CautionForm.values(standing.rule());
    return shown(id, standing.version(), CautionForm.form(values, false));
  }

  private static TemplateInstance shown(String id, int base, Form form) {
    List<Field> fields = CautionForm.names(id == null).stream().map(form::field).toList();
    return Templates.propose(id, base, form, fields);
  }

  @POST
  @Path("new")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response fresh(MultivaluedMap<String, String> sent) {
    return propose(null, 0, sent);
  }

  @POST
  @Path("{id}/propose")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response change(@RestPath String id, MultivaluedMap<String, String> sent) {
    int base;
    try {
      base = Integer.parseInt(String.valueOf(sent.getFirst("base")));
    } catch (NumberFormatException e) {
      base = NO_VERSION;
    }
    return propose(id, base, sent);
  }

  private Response propose(String id, int base, MultivaluedMap<String, String> sent) {
    Map<String, String> typed = CautionForm.typed(sent);
    CautionRule was = id == null ? null : care.caution(current.get(), id).rule();
    return forms.send(
        () -> store(CautionForm.rule(typed, was, catalog.vocabulary()), base, typed.get("reason")),
        "/flags",
        CautionForm.form(typed, id == null),
        form -> shown(id, base, form));
  }

  private void store(CautionRule rule, int base, String why) {
    try {
      proposals.propose(current.get(), rule, base, why);
    } catch (EntryChanged e) {
      throw new EntryRefused(
          Remark.error(
              RemarkId.CHANGED,
              "",
              "This caution was changed since you opened it: open it again."));
    }
  }

  @GET
  @Path("proposals/{id}")
  public TemplateInstance proposal(@RestPath UUID id) {
    return look(id, decision(""));
  }

  private TemplateInstance look(UUID id, Form form) {
    CautionProposal proposal = proposals.one(current.get(), id);
    CautionRule before =
        proposal.base() == 0 ? null : care.caution(current.get(), proposal.rule().id()).rule();
    boolean own = current.get().is(proposal.member());
    return Templates.proposal(
        new Look(
            proposal,
            care.differences(before, proposal.rule()),
            own,
            current.get().moderates() && !own && proposal.waiting(),
            form));
  }

  private static Form decision(String reason) {
    return new Form()
        .add(
            Field.of("reason", "What its author should know")
                .hint("Needed where you decline it.")
                .maxLength(DeskLimits.REASON)
                .value(reason));
  }

  @POST
  @Path("proposals/{id}")
  @RolesAllowed(Role.MODERATE)
  public Response decide(@RestPath UUID id, @RestForm String accept, @RestForm String reason) {
    return forms.send(
        () -> {
          try {
            proposals.decide(current.get(), id, "yes".equals(accept), reason);
          } catch (EntryChanged e) {
            throw new EntryRefused(
                Remark.error(
                    RemarkId.CHANGED,
                    "",
                    "The caution was changed since: decline it with a word why."));
          }
        },
        "/desk/cautions",
        decision(reason),
        form -> look(id, form));
  }

  @POST
  @Path("proposals/{id}/withdraw")
  public Response withdraw(@RestPath UUID id) {
    proposals.withdraw(current.get(), id);
    return DeskForms.to("/flags");
  }
}

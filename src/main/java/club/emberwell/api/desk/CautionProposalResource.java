package club.emberwell.api.desk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.desk.DeskRequests.Propose;
import club.emberwell.api.desk.WordsJson.ProposalView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.catalog.CautionRule;
import club.emberwell.desk.word.CautionProposals;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Texts of cautions as members would have them. */
@Path("/api/v1/caution-proposals")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Vocabulary")
public class CautionProposalResource {
  private final CautionProposals proposals;
  private final ApiRequest request;

  CautionProposalResource(CautionProposals proposals, ApiRequest request) {
    this.proposals = proposals;
    this.request = request;
  }

  @Keyed
  @POST
  @Fails(ProblemKind.CHANGED)
  @Operation(
      operationId = "proposeCaution",
      summary = "Propose how a caution should read; somebody else looks at it first")
  @APIResponseSchema(ProposalView.class)
  public Response propose(Propose sent) {
    return request.did(
        sent,
        actor -> {
          CautionRule rule = ApiRequest.needed("/caution", sent.caution());
          int base = sent.base() == null ? 0 : sent.base();
          return ProposalView.of(proposals.propose(actor, rule, base, sent.reason()));
        });
  }

  @GET
  @Operation(operationId = "listMyCautionProposals", summary = "One's own proposals, newest first")
  public ListJson<ProposalView> mine(@BeanParam ListQuery list) {
    return ListJson.of(proposals.mine(request.actor(), list.part()), ProposalView::of);
  }

  @GET
  @Path("{id}")
  @Operation(
      operationId = "getCautionProposal",
      summary = "A proposal, for its author and moderators")
  public ProposalView one(@RestPath UUID id) {
    return ProposalView.of(proposals.one(request.actor(), id));
  }

  @DELETE
  @Path("{id}")
  @Operation(operationId = "withdrawCautionProposal", summary = "Take back one's own proposal")
  public void withdraw(@RestPath UUID id) {
    proposals.withdraw(request.actor(), id);
  }
}

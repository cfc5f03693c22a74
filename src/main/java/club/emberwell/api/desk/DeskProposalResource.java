package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskRequests.Verdict;
import club.emberwell.api.desk.WordsJson.ProposalView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.word.CautionProposals;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
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

/** Proposed caution texts to look at. */
@Path("/api/v1/desk/caution-proposals")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class DeskProposalResource {
  private final CautionProposals proposals;
  private final ApiRequest request;

  DeskProposalResource(CautionProposals proposals, ApiRequest request) {
    this.proposals = proposals;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listWaitingCautionProposals", summary = "What waits, oldest first")
  public ListJson<ProposalView> waiting(@BeanParam ListQuery list) {
    return ListJson.of(proposals.waiting(request.actor(), list.part()), ProposalView::of);
  }

  @Keyed
  @POST
  @Path("{id}")
  @Operation(
      operationId = "decideCautionProposal",
      summary = "Put a text in force or decline it; never one's own")
  @APIResponseSchema(ProposalView.class)
  public Response decide(@RestPath UUID id, Verdict sent) {
    return request.did(
        sent,
        actor -> {
          boolean accept = ApiRequest.needed("/accept", sent.accept());
          return ProposalView.of(proposals.decide(actor, id, accept, sent.reason()));
        });
  }
}

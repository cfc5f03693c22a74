package club.emberwell.desk.word;

import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.store.CautionCare;
import club.emberwell.catalog.store.Deed;
import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Safety texts always wait for somebody else's look, whoever wrote them. Until then only their
 * author and moderators see them.
 */
@ApplicationScoped
public class CautionProposals {
  private static final ListOrder QUEUE = ListOrder.oldestFirst("proposals", DeskLimits.PAGE);
  private static final ListOrder MINE = ListOrder.newestFirst("own-proposals", DeskLimits.PAGE);

  private static final String ENTITY = "caution";
  private static final String WAITING = "waiting";

  private final CautionProposalRepository proposals;
  private final CautionCare cautions;
  private final Audit audit;

  CautionProposals(CautionProposalRepository proposals, CautionCare cautions, Audit audit) {
    this.proposals = proposals;
    this.cautions = cautions;
    this.audit = audit;
  }

  /**
   * Proposes how a caution should read.
   *
   * @param base version of the caution it is based on; 0 for a new one
   * @param why what is wrong or missing, for the moderator
   * @throws EntryChanged where the caution changed meanwhile
   */
  @Transactional
  public CautionProposal propose(Actor actor, CautionRule rule, int base, String why) {
    UUID member = DeskAccess.signedIn(actor);
    String reason = DeskAccess.reason(why);
    cautions.check(rule, base);
    if (proposals.waitingOf(member) >= DeskLimits.OPEN_PROPOSALS) {
      throw new EntryRefused(
          RemarkId.PROPOSALS_OPEN,
          "",
          "Several of your texts are waiting already. Wait until they are checked.");
    }
    CautionProposalEntity proposal = new CautionProposalEntity();
    proposal.id = UUID.randomUUID();
    proposal.cautionId = rule.id();
    proposal.base = base;
    proposal.rule = rule;
    proposal.why = reason;
    proposal.memberId = member;
    proposal.createdAt = Instant.now();
    proposal.state = WAITING;
    proposals.persist(proposal);
    Map<String, Object> detail = Map.of("proposal", proposal.id.toString());
    audit.record(actor, "propose", ENTITY, rule.id(), reason, detail);
    return one(actor, proposal.id);
  }

  /** Oldest first. */
  @Transactional
  public Slice<CautionProposal> waiting(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(part, QUEUE, proposals::waiting, CautionProposals::place);
  }

  /** The actor's own with what came of them. */
  @Transactional
  public Slice<CautionProposal> mine(Actor actor, Part part) {
    UUID member = DeskAccess.signedIn(actor);
    return Slice.read(part, MINE, place -> proposals.of(member, place), CautionProposals::place);
  }

  private static List<?> place(CautionProposal proposal) {
    return List.of(proposal.createdAt(), proposal.id());
  }

  /** One, for its author and for moderators. */
  @Transactional
  public CautionProposal one(Actor actor, UUID id) {
    return proposals
        .named(id)
        .filter(p -> actor.moderates() || actor.is(p.member()))
        .orElseThrow(() -> new EntryUnknown("proposal"));
  }

  /**
   * Puts a proposal in force or declines it.
   *
   * @param reason for its author; needed for a no
   * @throws EntryForbidden for one's own
   * @throws EntryChanged where the caution changed since it was proposed
   */
  @Transactional
  public CautionProposal decide(Actor actor, UUID id, boolean accept, String reason) {
    DeskAccess.moderates(actor);
    CautionProposalEntity proposal =
        proposals.locked(id).orElseThrow(() -> new EntryUnknown("proposal"));
    DeskAccess.notOwn(actor, proposal.memberId);
    String why = DeskAccess.text("/reason", reason, DeskLimits.REASON, !accept);
    if (!proposal.state.equals(WAITING)) {
      throw new EntryUnknown("waiting proposal");
    }
    settle(proposal, accept ? "accepted" : "declined", why == null ? "Accepted." : why);
    if (accept) {
      Deed deed = new Deed(proposal.memberId, proposal.why);
      if (proposal.base == 0) {
        cautions.add(proposal.rule, deed);
      } else {
        cautions.edit(proposal.rule, proposal.base, deed);
      }
    }
    Map<String, Object> detail = Map.of("proposal", id.toString());
    String action = accept ? "accept" : "decline";
    audit.record(actor, action, ENTITY, proposal.cautionId, proposal.outcome, detail);
    return one(actor, id);
  }

  private static void settle(CautionProposalEntity proposal, String state, String outcome) {
    proposal.state = state;
    proposal.decidedAt = Instant.now();
    proposal.outcome = outcome;
  }

  /** Takes back one's own proposal. */
  @Transactional
  public void withdraw(Actor actor, UUID id) {
    UUID member = DeskAccess.signedIn(actor);
    CautionProposalEntity proposal =
        proposals
            .locked(id)
            .filter(p -> p.memberId.equals(member) && p.state.equals(WAITING))
            .orElseThrow(() -> new EntryUnknown("waiting proposal of yours"));
    settle(proposal, "withdrawn", null);
  }
}

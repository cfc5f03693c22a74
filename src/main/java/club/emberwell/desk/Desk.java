package club.emberwell.desk;

import club.emberwell.catalog.CatalogService;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;

/** The first screen and the queue. */
@ApplicationScoped
public class Desk {
  private final DeskRepository desk;
  private final ItemRepository items;
  private final FlagRepository flags;
  private final CautionProposalRepository proposals;
  private final RuleRepository rules;
  private final CatalogService catalog;
  private final DeskConfig config;

  Desk(
      DeskRepository desk,
      ItemRepository items,
      FlagRepository flags,
      CautionProposalRepository proposals,
      RuleRepository rules,
      CatalogService catalog,
      DeskConfig config) {
    this.desk = desk;
    this.items = items;
    this.flags = flags;
    this.proposals = proposals;
    this.rules = rules;
    this.catalog = catalog;
    this.config = config;
  }

  /** Seven bounded statements, however large the club is. */
  @Transactional
  public DeskHome home(Actor actor) {
    DeskAccess.moderates(actor);
    Instant oldest = desk.oldest();
    return new DeskHome(
        desk.counts(),
        oldest,
        oldest != null && oldest.isBefore(Instant.now().minus(config.remindAfter())),
        items.waiting(0, DeskLimits.HOME),
        flags.open(0, DeskLimits.HOME),
        catalog.waiting(0).rows().stream().limit(DeskLimits.HOME).toList(),
        proposals.waiting(0, DeskLimits.HOME),
        rules.open(0, DeskLimits.HOME));
  }

  /** What waits for a first look, oldest first: one statement. */
  @Transactional
  public Slice<Item> waiting(Actor actor, Integer page) {
    DeskAccess.moderates(actor);
    return Slice.read(page, DeskLimits.PAGE, items::waiting);
  }
}

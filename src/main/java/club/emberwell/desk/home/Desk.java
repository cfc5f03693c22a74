package club.emberwell.desk.home;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskConfig;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.FlagRepository;
import club.emberwell.desk.rule.RuleRepository;
import club.emberwell.desk.word.CautionProposalRepository;
import club.emberwell.entry.Entries;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdict;
import club.emberwell.entry.Verdicts;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Place;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;

/** The first screen and the queue. */
@ApplicationScoped
public class Desk {
  private static final ListOrder WAITING = ListOrder.oldestFirst("waiting", DeskLimits.PAGE);
  private static final ListOrder TOLD = ListOrder.newestFirst("told", DeskLimits.PAGE);

  private final DeskRepository desk;
  private final Entries entries;
  private final Verdicts verdicts;
  private final FlagRepository flags;
  private final CautionProposalRepository proposals;
  private final RuleRepository rules;
  private final CatalogService catalog;
  private final DeskConfig config;

  Desk(
      DeskRepository desk,
      Entries entries,
      Verdicts verdicts,
      FlagRepository flags,
      CautionProposalRepository proposals,
      RuleRepository rules,
      CatalogService catalog,
      DeskConfig config) {
    this.desk = desk;
    this.entries = entries;
    this.verdicts = verdicts;
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
        isLate(oldest),
        entries.waiting(Place.first(WAITING, DeskLimits.HOME)),
        flags.open(Place.first(WAITING, DeskLimits.HOME)),
        catalog.waiting(Part.FIRST).rows().stream().limit(DeskLimits.HOME).toList(),
        proposals.waiting(Place.first(WAITING, DeskLimits.HOME)),
        rules.open(Place.first(TOLD, DeskLimits.HOME)));
  }

  /** How much waits, notes and words too: three statements. */
  @Transactional
  public DeskHome.Waiting waiting(Actor actor) {
    DeskAccess.moderates(actor);
    return new DeskHome.Waiting(desk.counts(), desk.oldestOfAll(), isLate(desk.oldest()));
  }

  private boolean isLate(Instant oldest) {
    return oldest != null && oldest.isBefore(Instant.now().minus(config.remindAfter()));
  }

  /** What waits for a first look, oldest first: one statement. */
  @Transactional
  public Slice<Entry> waiting(Actor actor, Part part) {
    DeskAccess.moderates(actor);
    return Slice.read(part, WAITING, entries::waiting, e -> List.of(e.times().created(), e.id()));
  }

  /** An entry as moderators see it. */
  @Transactional
  public Entry item(Actor actor, EntryRef ref) {
    DeskAccess.moderates(actor);
    return entries.get(ref);
  }

  /** What was decided about the actor's own entries, newest first; plain first looks left out. */
  @Transactional
  public Slice<Verdict> told(Actor actor, Part part) {
    return Slice.read(
        part, TOLD, place -> verdicts.mine(actor, place), verdict -> List.of(verdict.at()));
  }
}

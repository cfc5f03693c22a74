package club.emberwell.desk;

import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Decides about items with a reason that their authors read; never about one's own. */
@ApplicationScoped
public class Decisions {
  private static final String LOOKED_AT = "Looked at.";

  private final ItemRepository items;
  private final DecisionRepository decisions;
  private final List<Shelf> shelves;

  Decisions(ItemRepository items, DecisionRepository decisions, @All List<Shelf> shelves) {
    this.items = items;
    this.decisions = decisions;
    this.shelves = shelves;
  }

  /**
   * Moves an item; deciding what is so already does nothing.
   *
   * @param reason for the author; may be left out only where it is let appear
   * @throws EntryForbidden for one's own item and for one its author withdrew
   */
  @Transactional
  public Item decide(Actor actor, ItemRef ref, Action action, String reason) {
    return decide(actor, ref, action, reason, null);
  }

  /** The same by a rule, which is nobody. */
  @Transactional
  Item byRule(RuleCode rule, ItemRef ref, Action action, String reason) {
    return decide(DeskAccess.rule(rule.code()), ref, action, reason, rule.code());
  }

  private Item decide(Actor actor, ItemRef ref, Action action, String reason, String rule) {
    DeskAccess.moderates(actor);
    Item item = find(ref);
    DeskAccess.notOwn(actor, item.author());
    boolean silent = action == Action.APPROVE && (reason == null || reason.isBlank());
    String why = silent ? LOOKED_AT : DeskAccess.reason(reason);
    if (action == Action.APPROVE && !item.state().equals("WAITING")) {
      throw new EntryForbidden("It does not wait for a first look (any more).");
    }
    if (item.state().equals(action.state())) {
      return item;
    }
    shelf(ref.kind()).move(actor, ref.id(), action, why);
    decisions.add(item, actor.memberId(), rule, action, why, Instant.now());
    return find(ref);
  }

  Shelf shelf(ItemKind kind) {
    return shelves.stream().filter(s -> s.holds(kind)).findFirst().orElseThrow();
  }

  Item find(ItemRef ref) {
    return items.find(ref).orElseThrow(() -> new EntryUnknown(ref.kind().code()));
  }

  /** An item as moderators see it. */
  @Transactional
  public Item item(Actor actor, ItemRef ref) {
    DeskAccess.moderates(actor);
    return find(ref);
  }

  /** What was decided about an item, newest first; for its author and for moderators. */
  @Transactional
  public List<Decision> about(Actor actor, ItemRef ref) {
    List<Decision> all = decisions.about(ref, DeskLimits.PAGE);
    boolean may = actor.moderates() || all.stream().anyMatch(d -> actor.is(d.author()));
    return may ? all : List.of();
  }

  /** The last word on an item, for its author and for moderators; empty for everybody else. */
  @Transactional
  public Optional<Decision> lastWord(Actor actor, ItemRef ref) {
    return actor.signedIn() ? about(actor, ref).stream().findFirst() : Optional.empty();
  }

  /** What was decided about the actor's own entries, newest first; plain first looks left out. */
  @Transactional
  public Slice<Decision> mine(Actor actor, Integer page) {
    UUID member = DeskAccess.signedIn(actor);
    return Slice.read(page, DeskLimits.PAGE, (from, most) -> decisions.toldTo(member, from, most));
  }
}

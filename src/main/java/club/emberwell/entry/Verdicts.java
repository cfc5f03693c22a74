package club.emberwell.entry;

import club.emberwell.listing.Place;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What was decided about entries, for their authors and for moderators. */
@ApplicationScoped
@Transactional
public class Verdicts {
  /** What authors are told of; plain first looks are left out. */
  public static final Set<EntryAction> TOLD =
      Collections.unmodifiableSet(
          EnumSet.of(EntryAction.HELD, EntryAction.REMOVED, EntryAction.RESTORED));

  /** Read of one entry. */
  private static final int MOST = 30;

  private final VerdictRepository verdicts;

  Verdicts(VerdictRepository verdicts) {
    this.verdicts = verdicts;
  }

  /** What was decided about an entry, newest first; empty for everybody it does not concern. */
  public List<Verdict> about(Actor actor, EntryRef ref) {
    List<Verdict> all = actor.signedIn() ? verdicts.about(ref.id(), MOST) : List.of();
    boolean may = actor.moderates() || all.stream().anyMatch(v -> actor.is(author(v)));
    return may ? all : List.of();
  }

  private static java.util.UUID author(Verdict verdict) {
    return verdict.entry().author().id();
  }

  /** The last word on an entry; empty for everybody it does not concern. */
  public Optional<Verdict> lastWord(Actor actor, EntryRef ref) {
    return about(actor, ref).stream().findFirst();
  }

  /** What was decided about the actor's own entries, newest first; plain first looks left out. */
  public List<Verdict> mine(Actor actor, int most) {
    return verdicts.toldTo(EntryAccess.signedIn(actor), 0, most);
  }

  /** One page of them. */
  public List<Verdict> mine(Actor actor, Place place) {
    return verdicts.toldTo(EntryAccess.signedIn(actor), place.from(), place.most());
  }
}

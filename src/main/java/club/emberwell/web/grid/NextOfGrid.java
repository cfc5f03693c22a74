package club.emberwell.web.grid;

import club.emberwell.access.CurrentActor;
import club.emberwell.grid.next.NextTests;
import club.emberwell.member.Actor;
import club.emberwell.search.index.IndexNotReady;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.util.UUID;

/** What to burn next, on the page of a grid that has results. */
@Named("nextOfGrid")
@ApplicationScoped
public class NextOfGrid {
  private final NextTests next;
  private final CurrentActor current;

  NextOfGrid(NextTests next, CurrentActor current) {
    this.next = next;
    this.current = current;
  }

  /** Null while there is no index to compare with. */
  public NextView of(UUID id) {
    Actor actor = current.get();
    try {
      return NextView.of(next.of(actor, id, null), actor.units());
    } catch (IndexNotReady e) {
      return null;
    }
  }
}

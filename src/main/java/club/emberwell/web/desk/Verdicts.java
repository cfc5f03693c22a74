package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.desk.Decision;
import club.emberwell.desk.Decisions;
import club.emberwell.desk.ItemRef;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;
import java.util.UUID;

/** What was decided, for the pages of the items themselves: seen by authors and moderators only. */
@Named("verdicts")
@RequestScoped
public class Verdicts {
  private static final int RECENT = 5;

  private final Decisions decisions;
  private final CurrentActor current;

  Verdicts(Decisions decisions, CurrentActor current) {
    this.decisions = decisions;
    this.current = current;
  }

  /** The last word on an item, or null. */
  public Decision on(String kind, String id) {
    return decisions.lastWord(current.get(), ItemRef.of(kind, UUID.fromString(id))).orElse(null);
  }

  /** What was decided last about the reader's own entries. */
  public List<Decision> getRecent() {
    return current.get().signedIn()
        ? decisions.mine(current.get(), 0).rows().stream().limit(RECENT).toList()
        : List.of();
  }
}

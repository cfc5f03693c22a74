package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdict;
import club.emberwell.entry.Verdicts;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;
import java.util.UUID;

/** What was decided, for the pages of the items themselves: seen by authors and moderators only. */
@Named("verdicts")
@RequestScoped
public class LastWords {
  private static final int RECENT = 5;

  private final Verdicts verdicts;
  private final Flags flags;
  private final CurrentActor current;

  LastWords(Verdicts verdicts, Flags flags, CurrentActor current) {
    this.verdicts = verdicts;
    this.flags = flags;
    this.current = current;
  }

  /** The last word on an item, or null. */
  public Verdict on(String kind, String id) {
    return verdicts.lastWord(current.get(), EntryRef.of(kind, UUID.fromString(id))).orElse(null);
  }

  /** What was decided last about the reader's own entries. */
  public List<Verdict> getRecent() {
    return current.get().signedIn() ? verdicts.mine(current.get(), RECENT) : List.of();
  }

  /** What was answered last to what the reader flagged. */
  public List<Flag> getAnswers() {
    return current.get().signedIn() ? flags.answered(current.get(), RECENT) : List.of();
  }
}
